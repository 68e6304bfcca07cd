update parked_message set replayed_at = @at where parked_id = @ParkedId
