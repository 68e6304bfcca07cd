select count(*) from delivery where state = 'pending'
