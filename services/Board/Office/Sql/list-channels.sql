select channel as Channel,
       sum(case when state = 'delivered' then 1 else 0 end) as Delivered,
       sum(case when state = 'pending' then 1 else 0 end) as Pending,
       sum(case when state = 'held back' then 1 else 0 end) as HeldBack,
       sum(case when state = 'failed' then 1 else 0 end) as Failed,
       max(delivered_at) as LastDeliveredAt,
       max(case when state in ('pending', 'failed') then last_error end) as LastError
from delivery
group by channel
order by channel
