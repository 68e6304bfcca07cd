insert into extract_end (barcode, ended_at, ended_by, why) values (@barcode, @now, @who, @why)
