-- The log is the truth: append-only, gapless per shop, chained by hash. Every other table can be rebuilt from it.
create table shop (
  id text primary key check (id ~ '^[a-z][a-z0-9-]{0,39}$'),
  name text not null,
  invented boolean not null,
  settings jsonb not null default '{}',
  last_number integer not null default 0,
  last_hash text not null default ''
);

create table log (
  shop text not null references shop (id),
  number integer not null check (number > 0),
  subject text not null,
  kind text not null,
  day date not null,
  day_order integer not null,
  body text not null,
  schema_version text not null,
  evidence text not null,
  paper text,
  note text,
  replaces integer,
  recorded_at timestamptz not null,
  recorded_by text not null,
  previous_hash text not null,
  hash text not null,
  primary key (shop, number)
);
create index log_by_subject on log (shop, subject, number);
create index log_by_kind on log (shop, kind, number);

create function log_is_append_only() returns trigger language plpgsql as $$
begin
  if tg_op = 'DELETE' and current_setting('sparwright.dropping_shop', true) = old.shop then
    return old;
  end if;
  raise exception 'The log is append-only: a correction is a new entry that names the old one.';
end $$;
create trigger log_append_only before update or delete on log for each row execute function log_is_append_only();
create function log_is_not_truncated() returns trigger language plpgsql as $$
begin
  raise exception 'The log is append-only.';
end $$;
create trigger log_no_truncate before truncate on log execute function log_is_not_truncated();

-- Files by content: photographs, scans, kept letters.
create table file (
  sha256 text primary key check (sha256 ~ '^[0-9a-f]{64}$'),
  media_type text not null,
  bytes bytea not null
);

-- Projections.
create table aircraft (
  shop text not null references shop (id),
  id text not null,
  registration text not null,
  type text not null,
  model text not null,
  serial text not null,
  owner text,
  base text,
  last_day date,
  last_total_s bigint,
  last_landings integer,
  primary key (shop, id)
);
create table thing_of (
  shop text not null references shop (id),
  part text not null,
  holder text not null,
  primary key (shop, part, holder)
);
create table directive (
  shop text not null references shop (id),
  number text not null,
  issue integer not null,
  adopted_on date not null,
  adopted_by text not null,
  entry integer not null,
  document text not null,
  primary key (shop, number, issue)
);
create table letter (
  shop text not null references shop (id),
  number text not null,
  aircraft text not null,
  directive text not null,
  day date not null,
  entry integer not null,
  pdf_sha256 text not null references file (sha256),
  primary key (shop, number)
);
create table mapping (
  shop text not null references shop (id),
  shape text not null,
  mapping text not null,
  primary key (shop, shape)
);

-- Answers without the day; made again when an entry, an issue or the program changes.
create table answer (
  shop text not null references shop (id),
  part text not null,
  directive text not null,
  issue integer not null,
  action text not null,
  entry integer not null,
  program text not null,
  day date not null,
  result text not null,
  primary key (shop, part, directive, issue, action, entry, program)
);
