select n.channel as Channel, c.levels as Levels,
       sum(case when d.state = 'delivered' then 1 else 0 end) as Delivered,
       sum(case when d.state = 'pending' then 1 else 0 end) as Pending,
       sum(case when d.state = 'held back' then 1 else 0 end) as HeldBack,
       sum(case when d.state = 'failed' then 1 else 0 end) as Failed,
       max(d.delivered_at) as LastDeliveredAt,
       max(case when d.state in ('pending', 'failed') then d.last_error end) as LastError
from (select name as channel from notice_channel union select channel from delivery) n
left join notice_channel c on c.name = n.channel
left join delivery d on d.channel = n.channel
group by n.channel, c.levels
order by n.channel
