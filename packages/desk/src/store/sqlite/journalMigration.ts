/** What is written down about people and sites. A released step is never edited. */
export const journalMigration = {
  what: 'offers, states, contacts, letters, surveys, drills and thanks, one entry after the other',
  sql: `
create table journal (
  network_key integer not null references network,
  sequence integer not null,
  id text not null,
  about text not null,
  kind text not null,
  at_ms integer not null,
  by_person text not null,
  body text not null check (json_valid(body)),
  taken_back_by text,
  taken_back_at_ms integer,
  primary key (network_key, sequence),
  check ((taken_back_by is null) = (taken_back_at_ms is null))
) strict, without rowid;
create unique index journal_by_id on journal (network_key, id);
create index journal_about on journal (network_key, about, sequence);
create index journal_of_kind on journal (network_key, kind, sequence);
create index journal_by_person on journal (by_person);
-- An entry may be erased with a person's data, and taken back; what it says is never changed.
create trigger journal_is_never_changed before update on journal
  when new.id <> old.id or new.about <> old.about or new.kind <> old.kind or new.at_ms <> old.at_ms or new.body <> old.body
  begin select raise(abort, 'what is written down is never changed'); end;
`,
}
