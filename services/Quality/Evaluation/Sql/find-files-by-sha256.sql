select file_id from source_file where sha256 in @sha256
