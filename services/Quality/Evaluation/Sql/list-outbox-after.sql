select type, body from outbox where position > @position and type in @types order by position
