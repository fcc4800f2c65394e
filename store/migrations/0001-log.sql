-- Shops, the append-only log, the files it names, and the audit of dropped shops.

create table shop (
  id text primary key check (id ~ '^[a-z0-9][a-z0-9-]{0,39}$'),
  name text not null,
  invented boolean not null,
  settings text not null default '{}',
  last_number integer not null default 0,
  last_hash text not null default ''
);

create table log (
  shop text not null references shop (id),
  number integer not null check (number > 0),
  subject text not null,
  kind text not null,
  day text not null check (day ~ '^\d{4}-\d{2}-\d{2}$'),
  day_order integer not null,
  schema text not null,
  body text not null,
  evidence text not null,
  paper text,
  note text,
  replaces integer,
  recorded_at text not null check (recorded_at ~ '^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$'),
  recorded_by text not null,
  previous_hash text not null,
  hash text not null,
  primary key (shop, number),
  foreign key (shop, replaces) references log (shop, number),
  check (replaces < number)
);
create index log_subject on log (shop, subject, number);
create unique index log_replaces on log (shop, replaces) where replaces is not null;

create table file (
  sha256 text primary key check (sha256 ~ '^[0-9a-f]{64}$'),
  media_type text not null,
  content bytea not null
);

create table dropped_shop (
  shop text not null,
  name text not null,
  entries integer not null,
  last_hash text not null,
  dropped_at text not null,
  dropped_by text not null
);

-- The one way out: an invented shop, whole, inside drop_invented_shop().
create function may_go(in_shop text) returns boolean language sql as $$
  select coalesce(current_setting('sparwright.dropping', true), '') = in_shop
     and exists (select 1 from shop where id = in_shop and invented)
$$;

create function refuse_change() returns trigger language plpgsql as $$
begin
  if tg_op = 'DELETE' and tg_level = 'ROW' then
    if may_go(old.shop) then return old; end if;
  end if;
  raise exception 'entries of the log are never changed or deleted: a correction is a new entry';
end $$;

create trigger log_stays before update or delete on log for each row execute function refuse_change();
create trigger log_stays_whole before truncate on log for each statement execute function refuse_change();
create trigger file_stays before update on file for each row execute function refuse_change();
create trigger file_stays_whole before truncate on file for each statement execute function refuse_change();

create function keep_shop() returns trigger language plpgsql as $$
begin
  if tg_op = 'DELETE' then
    if may_go(old.id) then return old; end if;
    raise exception 'a shop is never deleted, unless it is an invented one dropped whole';
  end if;
  if new.id <> old.id or new.invented <> old.invented or new.last_number < old.last_number then
    raise exception 'a shop keeps its identity, its kind and its numbers';
  end if;
  return new;
end $$;
create trigger shop_stays before update or delete on shop for each row execute function keep_shop();
create trigger shop_stays_whole before truncate on shop for each statement execute function refuse_change();
