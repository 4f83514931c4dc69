/** The step that brings urgent reports into a ledger file. Released: never edited. */
export const urgentMigration = {
  what: 'urgent reports and what happened to them, settings of the office',
  sql: `
create table urgent_event (
  network_key integer not null references network,
  number integer not null,
  id text not null,
  report_id text not null,
  what text not null check (what in ('filed', 'seen', 'passed on', 'closed', 'undone')),
  at_ms integer not null,
  by_name text not null,
  by_person text,
  target text,
  body text not null,
  primary key (network_key, number),
  check ((what = 'undone') = (target is not null))
) strict, without rowid;
create unique index urgent_event_by_id on urgent_event (network_key, id);
create index urgent_event_of_report on urgent_event (network_key, report_id, number);
create index urgent_filed_at on urgent_event (network_key, at_ms) where what = 'filed';
create index urgent_undone on urgent_event (network_key, target) where target is not null;
create index urgent_event_by_person on urgent_event (by_person) where by_person is not null;

-- A name may leave an event when its person is forgotten. Nothing else of it ever changes.
create trigger urgent_event_is_never_changed before update of
  network_key, number, id, report_id, what, at_ms, target, body on urgent_event
  begin select raise(abort, 'an urgent report is never changed'); end;
create trigger urgent_event_keeps_its_name before update of by_name, by_person on urgent_event
  when old.by_person is null or new.by_person is not null or new.by_name <> ''
  begin select raise(abort, 'an urgent report is never changed'); end;
create trigger urgent_event_is_never_deleted before delete on urgent_event
  begin select raise(abort, 'an urgent report is never deleted'); end;

create table urgent_setting (
  network_key integer not null references network,
  sequence integer not null,
  set_at_ms integer not null,
  by_name text not null,
  body text not null,
  primary key (network_key, sequence)
) strict, without rowid;
create trigger urgent_setting_is_never_changed before update on urgent_setting
  begin select raise(abort, 'a setting is never changed'); end;
create trigger urgent_setting_is_never_deleted before delete on urgent_setting
  begin select raise(abort, 'a setting is never deleted'); end;
`,
} as const
