update parked_message set type = @Type, body = @Body, reason = @Reason, times_parked = times_parked + 1, parked_at = @ParkedAt, replayed_at = null
where message_id = @MessageId and endpoint = @Endpoint
