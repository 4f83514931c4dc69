/** The step that brings people, sign-in and the trail into a ledger file. Released: never edited. */
export const accessMigration = {
  what: 'people, passwords, sessions, sign-in links, the trail of what was done, and who decided by id',
  sql: `
create table person (
  id text primary key,
  name text not null,
  role text not null check (role in ('observer', 'viewer', 'colleague', 'coordinator')),
  mail text unique,
  language text not null check (language in ('en', 'es')),
  added_at_ms integer not null,
  last_seen_on integer
) strict;

create table person_gauge (
  person_id text not null references person on delete cascade,
  gauge_id text not null,
  primary key (person_id, gauge_id)
) strict, without rowid;

create table password (
  person_id text primary key references person on delete cascade,
  hash text not null
) strict;

create table session (
  token_hash text primary key,
  person_id text not null references person on delete cascade,
  started_at_ms integer not null,
  ends_at_ms integer not null
) strict, without rowid;
create index session_of_person on session (person_id);

create table sign_in_link (
  token_hash text primary key,
  browser_hash text not null,
  person_id text not null references person on delete cascade,
  asked_at_ms integer not null,
  ends_at_ms integer not null
) strict, without rowid;
create index sign_in_link_of_person on sign_in_link (person_id);

-- Holds no names, so that it can stay whole when a person is forgotten.
create table audit (
  id text primary key,
  at_ms integer not null,
  person_id text,
  door text not null check (door in ('desk', 'command line', 'rule')),
  act text not null,
  subject text,
  result text not null check (result in ('done', 'refused'))
) strict, without rowid;
create index audit_of_person on audit (person_id, id);
create index audit_of_subject on audit (subject, id);
create trigger audit_is_never_changed before update on audit
  begin select raise(abort, 'the trail is never changed'); end;
create trigger audit_is_never_deleted before delete on audit
  begin select raise(abort, 'the trail is never shortened'); end;

-- A name may leave a decision or a setting when its person is forgotten. Nothing else of it ever changes.
alter table decision add column by_person text;
alter table rule_setting add column by_person text;
create index decision_by_person on decision (by_person) where by_person is not null;

drop trigger decision_is_never_changed;
create trigger decision_is_never_changed before update of
  network_key, gauge_key, last_day, sequence, id, reading_id, verdict, amended_um, amended_is_trace, amended_first_day,
  amended_last_day, by_kind, reason, decided_at_ms, undoes, mistake on decision
  begin select raise(abort, 'a decision is never changed'); end;
create trigger decision_keeps_its_name before update of by_name, by_person on decision
  when old.by_person is null or new.by_person is not null or new.by_name <> ''
  begin select raise(abort, 'a decision is never changed'); end;

drop trigger rule_setting_is_never_changed;
create trigger rule_setting_is_never_changed before update of
  network_key, sequence, id, let_stand_at, why, set_at_ms on rule_setting
  begin select raise(abort, 'a setting of the rule is never changed'); end;
create trigger rule_setting_keeps_its_name before update of by_name, by_person on rule_setting
  when old.by_person is null or new.by_person is not null or new.by_name <> ''
  begin select raise(abort, 'a setting of the rule is never changed'); end;
`,
} as const
