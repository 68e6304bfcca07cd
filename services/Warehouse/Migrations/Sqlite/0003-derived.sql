create table sample_result (
    barcode       text not null references sample (barcode),
    quantity_id   integer not null references quantity (quantity_id),
    value         numeric not null,
    below_limit   integer not null,
    n             integer not null,
    s             numeric,
    basis         text not null,
    from_readings text not null,
    computed_at   text not null,
    primary key (barcode, quantity_id)
);

create table qc_alert (
    alert_id        integer not null primary key,
    fingerprint     text not null unique,
    rule_name       text not null,
    level           text not null check (level in ('block', 'hold', 'note')),
    scope           text not null,
    trial_code      text,
    pull_no         integer,
    barcode         text,
    headline        text not null,
    advice          text not null,
    facts           text not null,
    state           text not null check (state in ('open', 'cleared', 'settled')),
    times_raised    integer not null,
    opened_at       text not null,
    changed_at      text not null,
    cleared_at      text,
    acknowledged_at text,
    acknowledged_by text,
    settled_at      text,
    settled_by      text,
    settled_why     text
);
create index ix_qc_alert_scope on qc_alert (scope);
create index ix_qc_alert_state on qc_alert (state, level);

create table delivery (
    delivery_id     integer not null primary key,
    alert_id        integer not null references qc_alert (alert_id),
    times_raised    integer not null,
    event           text not null check (event in ('raised', 'cleared', 'undelivered', 'reminder')),
    channel         text not null,
    urgency         integer not null,
    state           text not null check (state in ('pending', 'delivered', 'held back', 'failed')),
    attempts        integer not null,
    due_at          text not null,
    next_attempt_at text not null,
    last_attempt_at text,
    digest_id       text,
    last_error      text,
    created_at      text not null,
    delivered_at    text,
    unique (alert_id, times_raised, event, channel)
);
create index ix_delivery_due on delivery (channel, state, urgency, delivery_id);
create index ix_delivery_owed on delivery (state, due_at);
create index ix_delivery_tried on delivery (channel, last_attempt_at);
create index ix_delivery_digest on delivery (channel, state, digest_id) where digest_id is not null;
