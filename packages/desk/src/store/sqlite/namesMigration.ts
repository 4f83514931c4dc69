/**
 * The step that lets a name leave wherever it stands beside something that was done, once its person is forgotten. A name
 * becomes empty, and never another name; nothing else of such a row ever changes. Released: never edited.
 */
export const namesMigration = {
  what: 'names of forgotten people may leave absences, photos, settings, keys and messages',
  sql: `
drop trigger photo_is_never_changed;
create trigger photo_is_never_changed before update of
  network_key, report_id, sequence, sha256, bytes, width_px, height_px, received_at_ms on photo
  begin select raise(abort, 'a photo is never changed'); end;
create trigger photo_keeps_its_name before update of by_name on photo when new.by_name <> ''
  begin select raise(abort, 'a photo is never changed'); end;

drop trigger outgoing_event_is_never_changed;
create trigger outgoing_event_is_never_changed before update of
  network_key, sequence, message_id, what, at_ms, detail on outgoing_event
  begin select raise(abort, 'what happened to a message is never changed'); end;
create trigger outgoing_event_keeps_its_name before update of by_name on outgoing_event when new.by_name <> ''
  begin select raise(abort, 'what happened to a message is never changed'); end;

drop trigger outgoing_setting_is_never_changed;
create trigger outgoing_setting_is_never_changed before update of
  network_key, sequence, what, settings, set_at_ms on outgoing_setting
  begin select raise(abort, 'a setting is never changed'); end;
create trigger outgoing_setting_keeps_its_name before update of by_name on outgoing_setting when new.by_name <> ''
  begin select raise(abort, 'a setting is never changed'); end;

drop trigger urgent_setting_is_never_changed;
create trigger urgent_setting_is_never_changed before update of
  network_key, sequence, set_at_ms, body on urgent_setting
  begin select raise(abort, 'a setting is never changed'); end;
create trigger urgent_setting_keeps_its_name before update of by_name on urgent_setting when new.by_name <> ''
  begin select raise(abort, 'a setting is never changed'); end;

drop trigger sender_key_is_never_changed;
create trigger sender_key_is_never_changed before update of
  id, sender, scopes, start, key_hash, made_at_ms on sender_key
  begin select raise(abort, 'a key is never changed'); end;
create trigger sender_key_keeps_its_name before update of made_by on sender_key when new.made_by <> ''
  begin select raise(abort, 'a key is never changed'); end;

drop trigger absence_is_only_withdrawn;
create trigger absence_is_only_withdrawn before update on absence
  when new.id <> old.id or new.gauge_key <> old.gauge_key
    or new.first_day <> old.first_day or new.last_day <> old.last_day
    or new.announced_at_ms <> old.announced_at_ms
    or (new.announced_by <> old.announced_by and new.announced_by <> '')
    or (old.withdrawn_by is not null and (
      new.withdrawn_at_ms is not old.withdrawn_at_ms
      or new.withdrawn_by is null
      or (new.withdrawn_by <> old.withdrawn_by and new.withdrawn_by <> '')))
  begin select raise(abort, 'an absence is withdrawn, never changed'); end;
`,
} as const
