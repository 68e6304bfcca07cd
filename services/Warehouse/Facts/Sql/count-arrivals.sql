select listed.State, count(*) as Arrivals
from (
    select case when a.again = 1 then 'duplicate' else f.state end as State
    from arrival a
    join source_file f on f.file_id = a.file_id
    union all
    select 'waiting'
    from held_file
) listed
group by listed.State
