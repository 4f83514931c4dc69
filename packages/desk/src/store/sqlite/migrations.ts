import { accessMigration } from './accessMigration.ts'

/**
 * The steps that bring a ledger file up to date, in order, forward only. A step that has been released is never edited:
 * add the next one. The number of the last step done is kept in `user_version`.
 */
import { journalMigration } from './journalMigration.ts'
import { machineMigration } from './machineMigration.ts'
import { namesMigration } from './namesMigration.ts'
import { outgoingMigrationSql } from './outgoingMigration.ts'
import { urgentMigration } from './urgentMigration.ts'

export interface Migration {
  number: number
  what: string
  sql: string
}

export const migrations: readonly Migration[] = [
  {
    number: 1,
    what: 'networks, gauges, readings, decisions, absences, map layers, cache',
    sql: `
create table network (
  network_key integer primary key,
  id text not null unique,
  name text not null,
  time_zone text not null,
  reading_time text not null,
  accept_window_min integer not null,
  unit text not null check (unit in ('mm', 'in')),
  language text not null,
  let_stand_at real,
  docket_below real not null
) strict;

create table gauge (
  network_key integer not null references network,
  gauge_key integer not null,
  id text not null,
  code text not null,
  name text not null,
  lat_deg real not null,
  lon_deg real not null,
  elevation_m real,
  area text,
  observer_name text,
  resolution_um integer,
  opened_on integer,
  closed_on integer,
  primary key (network_key, gauge_key),
  unique (network_key, code),
  unique (network_key, id)
) strict, without rowid;

create table reading (
  network_key integer not null,
  gauge_key integer not null,
  last_day integer not null,
  first_day integer not null,
  version integer not null,
  id text not null,
  amount_um integer not null check (amount_um >= 0),
  is_trace integer not null check (is_trace in (0, 1)),
  starts_at_ms integer not null,
  ends_at_ms integer not null,
  received_at_ms integer not null,
  text text not null,
  unit text not null check (unit in ('mm', 'in')),
  remark text,
  door text not null,
  supersedes text,
  primary key (network_key, gauge_key, last_day, first_day, version),
  foreign key (network_key, gauge_key) references gauge,
  check (first_day <= last_day),
  check (is_trace = 0 or amount_um = 0)
) strict, without rowid;
create unique index reading_by_id on reading (network_key, id);
-- Holds all that the science asks of a day, so that years of days are read without a look at each row.
create index reading_by_day on reading (network_key, last_day, gauge_key, amount_um, is_trace, id);
create unique index reading_superseded on reading (network_key, supersedes) where supersedes is not null;

create table decision (
  network_key integer not null,
  gauge_key integer not null,
  last_day integer not null,
  sequence integer not null,
  id text not null,
  reading_id text not null,
  verdict text not null check (verdict in ('stands', 'amended', 'asked', 'set aside')),
  amended_um integer,
  amended_is_trace integer,
  amended_first_day integer,
  amended_last_day integer,
  by_kind text not null check (by_kind in ('person', 'rule')),
  by_name text not null,
  reason text not null,
  decided_at_ms integer not null,
  undoes text,
  primary key (network_key, gauge_key, last_day, sequence),
  foreign key (network_key, gauge_key) references gauge,
  foreign key (network_key, reading_id) references reading (network_key, id)
) strict, without rowid;
create unique index decision_by_id on decision (network_key, id);
create unique index decision_by_sequence on decision (network_key, sequence);
create index decision_by_day on decision (network_key, last_day, sequence);

create table absence (
  network_key integer not null,
  gauge_key integer not null,
  first_day integer not null,
  last_day integer not null,
  primary key (network_key, gauge_key, first_day, last_day),
  foreign key (network_key, gauge_key) references gauge,
  check (first_day <= last_day)
) strict, without rowid;

create table map_layer (
  network_key integer not null references network,
  kind text not null,
  name text not null,
  geojson text not null,
  primary key (network_key, kind, name)
) strict;

create table cache (
  network_key integer not null references network,
  key text not null,
  version text not null,
  body text not null,
  primary key (network_key, key)
) strict;

create trigger reading_is_never_changed before update on reading
  begin select raise(abort, 'a reading is never changed'); end;
create trigger reading_is_never_deleted before delete on reading
  begin select raise(abort, 'a reading is never deleted'); end;
create trigger decision_is_never_changed before update on decision
  begin select raise(abort, 'a decision is never changed'); end;
create trigger decision_is_never_deleted before delete on decision
  begin select raise(abort, 'a decision is never deleted'); end;
`,
  },
  {
    number: 2,
    what: 'how many readings a network has, kept with every delivery instead of counted for every morning',
    sql: `
create table reading_count (
  network_key integer primary key references network,
  readings integer not null,
  stored integer not null
) strict;
insert into reading_count
  select network_key, count(*) - count(supersedes), count(*) from reading group by network_key;
`,
  },
  {
    number: 3,
    what: 'settings of the rule, one after the other, in place of the one number that a network had',
    sql: `
create table rule_setting (
  network_key integer not null references network,
  sequence integer not null,
  id text not null,
  let_stand_at real check (let_stand_at > 0 and let_stand_at < 1),
  by_name text not null,
  why text not null,
  set_at_ms integer not null,
  primary key (network_key, sequence)
) strict, without rowid;
create unique index rule_setting_by_id on rule_setting (network_key, id);
insert into rule_setting
  select network_key, 1, 'before-settings', let_stand_at, 'coordinator', 'Set before settings were kept.', 0
  from network where let_stand_at > 0 and let_stand_at < 1;
alter table network drop column let_stand_at;

create trigger rule_setting_is_never_changed before update on rule_setting
  begin select raise(abort, 'a setting of the rule is never changed'); end;
create trigger rule_setting_is_never_deleted before delete on rule_setting
  begin select raise(abort, 'a setting of the rule is never deleted'); end;
`,
  },
  {
    number: 4,
    what: 'the mistake that the finding named to the person who decided, to learn from',
    sql: `
alter table decision add column mistake text;
`,
  },
  {
    number: 5,
    what: 'photos of urgent reports: what is known of each; the files lie beside the ledger',
    sql: `
create table photo (
  network_key integer not null references network,
  report_id text not null,
  sequence integer not null,
  sha256 text not null check (length(sha256) = 64),
  bytes integer not null check (bytes > 0),
  width_px integer not null,
  height_px integer not null,
  received_at_ms integer not null,
  by_name text not null,
  primary key (network_key, report_id, sequence)
) strict, without rowid;
create unique index photo_of_report on photo (network_key, report_id, sha256);
create index photo_by_content on photo (sha256, bytes);
-- A photo may be erased with a person's data; it is never changed.
create trigger photo_is_never_changed before update on photo
  begin select raise(abort, 'a photo is never changed'); end;
`,
  },
  { number: 6, ...accessMigration },
  {
    number: 7,
    what: 'messages on their way out, absences with who announced them, reminders',
    sql: outgoingMigrationSql,
  },
  {
    number: 8,
    what: 'what an observer was asked back about at entry, and what stood there first; null where nobody asked',
    sql: `
alter table reading add column confirmed text;
`,
  },
  { number: 9, ...urgentMigration },
  { number: 10, ...machineMigration },
  { number: 11, ...namesMigration },
  { number: 12, ...journalMigration },
]
