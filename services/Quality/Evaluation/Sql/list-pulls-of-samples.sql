select distinct trial_code as TrialCode, pull_no as PullNo from sample where barcode in @barcodes
