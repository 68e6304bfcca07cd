-- Pages count readings by sample and quantity: with both in one index no row of the table is read for it.
drop index ix_reading_barcode on reading;
create index ix_reading_barcode on reading (barcode, quantity_id, standing);

create index ix_control_check_chart on control_check (material, quantity_id, run_id) where standing = 0;
create index ix_arrival_again on arrival (again, file_id);
create index ix_source_file_state on source_file (state);
