select barcode from sample where barcode in @barcodes
