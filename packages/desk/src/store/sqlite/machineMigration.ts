/** The step that brings senders' keys and deliveries into a ledger file. Released: never edited. */
export const machineMigration = {
  what: 'keys of senders, and deliveries by machine or folder, each once',
  sql: `
create table sender_key (
  id text primary key,
  sender text not null,
  scopes text not null,
  start text not null,
  key_hash text not null unique check (length(key_hash) = 64),
  made_at_ms integer not null,
  made_by text not null,
  revoked_at_ms integer,
  last_used_on integer
) strict, without rowid;
create trigger sender_key_is_never_changed before update of
  id, sender, scopes, start, key_hash, made_at_ms, made_by on sender_key
  begin select raise(abort, 'a key is never changed'); end;
create trigger sender_key_stays_revoked before update of revoked_at_ms on sender_key
  when old.revoked_at_ms is not null
  begin select raise(abort, 'a revoked key stays revoked'); end;

create table delivery (
  network_key integer not null references network,
  key text not null,
  body_hash text not null check (length(body_hash) = 64),
  sender text not null,
  name text not null,
  received_at_ms integer not null,
  answer blob not null,
  primary key (network_key, key)
) strict;
create index delivery_by_time on delivery (network_key, received_at_ms);
create trigger delivery_is_never_changed before update on delivery
  begin select raise(abort, 'a delivery is never changed'); end;
create trigger delivery_is_never_deleted before delete on delivery
  begin select raise(abort, 'a delivery is never deleted'); end;
`,
} as const
