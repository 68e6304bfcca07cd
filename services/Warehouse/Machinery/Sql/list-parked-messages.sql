select parked_id as ParkedId, message_id as MessageId, endpoint, type, body, reason, times_parked as TimesParked, parked_at as ParkedAt
from parked_message
where replayed_at is null
  and not exists (select 1 from inbox where inbox.message_id = parked_message.message_id and inbox.consumer = parked_message.endpoint)
order by parked_id
