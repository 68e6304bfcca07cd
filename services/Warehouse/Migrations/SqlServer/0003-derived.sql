create table sample_result (
    barcode       nvarchar(32) collate Latin1_General_BIN2 not null references sample (barcode),
    quantity_id   smallint not null references quantity (quantity_id),
    value         decimal(28, 12) not null,
    below_limit   bit not null,
    n             int not null,
    s             decimal(28, 12),
    basis         nvarchar(64) collate Latin1_General_BIN2 not null,
    from_readings nvarchar(max) collate Latin1_General_BIN2 not null,
    computed_at   datetimeoffset(3) not null,
    primary key (barcode, quantity_id)
);

create table qc_alert (
    alert_id        int identity(1, 1) not null primary key,
    fingerprint     nvarchar(500) collate Latin1_General_BIN2 not null unique,
    rule_name       nvarchar(64) collate Latin1_General_BIN2 not null,
    level           nvarchar(16) collate Latin1_General_BIN2 not null check (level in ('block', 'hold', 'note')),
    scope           nvarchar(420) collate Latin1_General_BIN2 not null,
    trial_code      nvarchar(32) collate Latin1_General_BIN2,
    pull_no         int,
    barcode         nvarchar(32) collate Latin1_General_BIN2,
    headline        nvarchar(1000) collate Latin1_General_BIN2 not null,
    advice          nvarchar(1000) collate Latin1_General_BIN2 not null,
    facts           nvarchar(max) collate Latin1_General_BIN2 not null,
    state           nvarchar(16) collate Latin1_General_BIN2 not null check (state in ('open', 'cleared', 'settled')),
    times_raised    int not null,
    opened_at       datetimeoffset(3) not null,
    changed_at      datetimeoffset(3) not null,
    cleared_at      datetimeoffset(3),
    acknowledged_at datetimeoffset(3),
    acknowledged_by nvarchar(128) collate Latin1_General_BIN2,
    settled_at      datetimeoffset(3),
    settled_by      nvarchar(128) collate Latin1_General_BIN2,
    settled_why     nvarchar(1000) collate Latin1_General_BIN2
);
create index ix_qc_alert_scope on qc_alert (scope);
create index ix_qc_alert_state on qc_alert (state, level);

create table delivery (
    delivery_id     int identity(1, 1) not null primary key,
    alert_id        int not null references qc_alert (alert_id),
    times_raised    int not null,
    event           nvarchar(16) collate Latin1_General_BIN2 not null check (event in ('raised', 'cleared', 'undelivered', 'reminder')),
    channel         nvarchar(64) collate Latin1_General_BIN2 not null,
    urgency         smallint not null,
    state           nvarchar(16) collate Latin1_General_BIN2 not null check (state in ('pending', 'delivered', 'held back', 'failed')),
    attempts        int not null,
    due_at          datetimeoffset(3) not null,
    next_attempt_at datetimeoffset(3) not null,
    last_attempt_at datetimeoffset(3),
    digest_id       nvarchar(64) collate Latin1_General_BIN2,
    last_error      nvarchar(2000) collate Latin1_General_BIN2,
    created_at      datetimeoffset(3) not null,
    delivered_at    datetimeoffset(3),
    unique (alert_id, times_raised, event, channel)
);
create index ix_delivery_due on delivery (channel, state, urgency, delivery_id);
create index ix_delivery_owed on delivery (state, due_at);
create index ix_delivery_tried on delivery (channel, last_attempt_at);
create index ix_delivery_digest on delivery (channel, state, digest_id) where digest_id is not null;
