select f.file_id as FileId, f.name as Name, f.sha256 as Sha256, f.kind as Kind, f.profile as Profile, f.profile_version as ProfileVersion,
       f.method as Method, f.method_facts as MethodFacts
from source_file f
where f.file_id in (select r.file_id
                    from reading r
                    join sample s on s.barcode = r.barcode
                    where s.trial_code = @trialCode)
order by f.file_id
