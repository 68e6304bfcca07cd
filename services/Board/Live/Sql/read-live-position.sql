select coalesce((select max(position) from outbox), 0) as Told,
       coalesce((select max(change_id) from change_log), 0) as Changed,
       coalesce((select max(arrival_id) from arrival), 0) as Arrived,
       (select count(*) from held_file) as Held,
       (select max(handled_at) from inbox) as Judged
