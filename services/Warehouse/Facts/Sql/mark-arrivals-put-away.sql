update arrival set put_away = 1 where arrival_id in @arrivalIds
