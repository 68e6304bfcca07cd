select alert_id
from qc_alert
where barcode in @barcodes
order by alert_id
