insert into change_log (at, who, what, subject, why) values (@At, @Who, @What, @Subject, @Why)
