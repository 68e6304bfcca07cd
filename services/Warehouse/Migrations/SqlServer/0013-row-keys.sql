-- Only SQLite keeps row keys that are whole numbers as numbers; here they stay text, and this number keeps the two schemas in step.
select 1;
