select (select count(*) from arrival) as Files,
       (select count(*) from reading where standing = 0) as Readings,
       (select count(*) from sample) as Samples,
       (select count(distinct barcode) from sample_result) as SamplesWithResults,
       (select count(*) from sample_result) as Results
