delete from notice_channel
