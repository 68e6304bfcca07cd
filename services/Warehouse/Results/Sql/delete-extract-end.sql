delete from extract_end where barcode = @barcode
