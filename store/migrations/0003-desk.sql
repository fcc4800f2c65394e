-- What the desk reads besides the record: slim answers, the state of each aircraft's answers, withdrawn directives,
-- drafts, pages of paper books, requests to owners. All of it can be made again from the log or by the engine.

-- The answer without its working, for pages that show many aircraft.
alter table answer add column aircraft text not null default '';
alter table answer add column line text not null default 'null';
create index answer_aircraft on answer (shop, aircraft);

-- Up to which entry an aircraft's answers are computed, by which program, on which day.
create table desk_state (
  shop text not null references shop (id),
  aircraft text not null,
  entry integer not null,
  program text not null,
  day text not null,
  stale boolean not null default false,
  touches text[] not null,
  summary text not null,
  primary key (shop, aircraft)
);

create table directive_withdrawn (
  shop text not null references shop (id),
  entry integer not null,
  directive text not null,
  issue integer,
  day text not null,
  because text not null,
  withdrawn_by text not null,
  primary key (shop, entry)
);

create table directive_draft (
  shop text not null references shop (id),
  directive text not null,
  entry integer not null,
  day text not null,
  kept_by text not null,
  document text not null,
  primary key (shop, directive)
);

create table page (
  shop text not null references shop (id),
  entry integer not null,
  aircraft text not null,
  sha256 text not null,
  media_type text not null,
  title text not null,
  page text not null,
  primary key (shop, entry)
);
create index page_aircraft on page (shop, aircraft);

create table request (
  shop text not null references shop (id),
  entry integer not null,
  aircraft text not null,
  asks text not null,
  day text not null,
  words text not null,
  asked_by text not null,
  primary key (shop, entry)
);

-- Takes an invented shop out of every table that has a shop, so that a later table is never forgotten.
create or replace function drop_invented_shop(in_shop text, at text, by_whom text) returns void language plpgsql as $$
declare
  gone shop%rowtype;
  name text;
begin
  select * into gone from shop where id = in_shop for update;
  if not found then raise exception 'no shop %', in_shop; end if;
  if not gone.invented then raise exception 'shop % is real: it is never dropped', in_shop; end if;
  perform set_config('sparwright.dropping', in_shop, true);
  for name in
    select c.table_name from information_schema.columns c
    join information_schema.tables t using (table_schema, table_name)
    where c.table_schema = current_schema() and c.column_name = 'shop' and t.table_type = 'BASE TABLE'
      and c.table_name not in ('log', 'dropped_shop')
  loop
    execute format('delete from %I where shop = $1', name) using in_shop;
  end loop;
  delete from log where shop = in_shop;
  delete from shop where id = in_shop;
  insert into dropped_shop values (in_shop, gone.name, gone.last_number, gone.last_hash, at, by_whom);
  perform set_config('sparwright.dropping', '', true);
end $$;
