select c.at as At, c.who as Who, c.what as What, c.subject as Subject, c.why as Why
from change_log c
where c.subject in @subjects
order by c.change_id
