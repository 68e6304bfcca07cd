update delivery set state = 'held back', last_error = @reason
where delivery_id = @deliveryId and state = 'pending' and attempts = 0
