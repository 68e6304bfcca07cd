select file_id as FileId, method_facts as Facts from source_file where file_id in @fileIds
