/** Tables of messages on their way out, of announced absences and of reminders. Released steps are never edited. */
export const outgoingMigrationSql = `
create table outgoing (
  network_key integer not null references network,
  sequence integer not null,
  id text not null,
  message_key text not null,
  purpose text not null,
  kind text not null check (kind in ('mail', 'webhook', 'file')),
  recipient text not null,
  content text not null,
  repeatable integer not null check (repeatable in (0, 1)),
  is_secret integer not null check (is_secret in (0, 1)),
  by_name text not null,
  queued_at_ms integer not null,
  not_after_ms integer,
  state text not null check (state in ('waiting', 'sending', 'sent', 'failed', 'in doubt', 'discarded')),
  attempts integer not null,
  last_error text,
  not_before_ms integer not null,
  changed_at_ms integer not null,
  sent_at_ms integer,
  receipt text,
  is_emptied integer not null check (is_emptied in (0, 1)),
  token text unique,
  lease_until_ms integer,
  is_handed_over integer not null check (is_handed_over in (0, 1)),
  discarded_from text,
  primary key (network_key, sequence)
) strict, without rowid;
create unique index outgoing_by_id on outgoing (network_key, id);
create unique index outgoing_by_key on outgoing (network_key, message_key);
create index outgoing_by_state on outgoing (network_key, state, not_before_ms);
create index outgoing_by_recipient on outgoing (network_key, recipient);
create trigger outgoing_is_never_deleted before delete on outgoing
  begin select raise(abort, 'a message is never deleted'); end;
create trigger outgoing_stays_sent before update on outgoing when old.state = 'sent' and new.state <> 'sent'
  begin select raise(abort, 'a message that was sent stays sent'); end;

create table outgoing_event (
  network_key integer not null references network,
  sequence integer not null,
  message_id text not null,
  what text not null,
  by_name text not null,
  at_ms integer not null,
  detail text,
  primary key (network_key, sequence)
) strict, without rowid;
create index outgoing_event_of on outgoing_event (network_key, message_id);
create trigger outgoing_event_is_never_changed before update on outgoing_event
  begin select raise(abort, 'what happened to a message is never changed'); end;
create trigger outgoing_event_is_never_deleted before delete on outgoing_event
  begin select raise(abort, 'what happened to a message is never deleted'); end;

create table absence_announced (
  network_key integer not null,
  sequence integer not null,
  id text not null,
  gauge_key integer not null,
  first_day integer not null,
  last_day integer not null,
  announced_by text not null,
  announced_at_ms integer not null,
  withdrawn_by text,
  withdrawn_at_ms integer,
  primary key (network_key, sequence),
  foreign key (network_key, gauge_key) references gauge,
  check (first_day <= last_day),
  check ((withdrawn_by is null) = (withdrawn_at_ms is null))
) strict, without rowid;
insert into absence_announced
  select network_key, row_number() over (partition by network_key order by first_day, gauge_key),
    'absence-' || gauge_key || '-' || first_day || '-' || last_day, gauge_key, first_day, last_day, 'coordinator', 0, null, null
  from absence;
drop table absence;
alter table absence_announced rename to absence;
create unique index absence_by_id on absence (network_key, id);
create unique index absence_once on absence (network_key, gauge_key, first_day, last_day) where withdrawn_by is null;
create index absence_by_day on absence (network_key, last_day);
create trigger absence_is_never_deleted before delete on absence
  begin select raise(abort, 'an absence is withdrawn, never deleted'); end;
create trigger absence_is_only_withdrawn before update on absence
  when old.withdrawn_by is not null or new.id <> old.id or new.gauge_key <> old.gauge_key
    or new.first_day <> old.first_day or new.last_day <> old.last_day
    or new.announced_by <> old.announced_by or new.announced_at_ms <> old.announced_at_ms
  begin select raise(abort, 'an absence is withdrawn, never changed'); end;

create table outgoing_setting (
  network_key integer not null references network,
  sequence integer not null,
  what text not null check (what in ('mail', 'reminders')),
  settings text not null,
  by_name text not null,
  set_at_ms integer not null,
  primary key (network_key, sequence)
) strict, without rowid;
create trigger outgoing_setting_is_never_changed before update on outgoing_setting
  begin select raise(abort, 'a setting is never changed'); end;
create trigger outgoing_setting_is_never_deleted before delete on outgoing_setting
  begin select raise(abort, 'a setting is never deleted'); end;

create table reminder_choice (
  network_key integer not null references network,
  sequence integer not null,
  person_id text not null,
  wants integer not null check (wants in (0, 1)),
  way text not null check (way in ('mail', 'text')),
  phone text,
  by_name text not null,
  chosen_at_ms integer not null,
  primary key (network_key, sequence)
) strict, without rowid;
create index reminder_choice_of on reminder_choice (network_key, person_id);

create table reminder_key (
  network_key integer primary key references network,
  secret text not null
) strict;
`
