-- Everything here can be made again from the log (answers: from the engine).

create table aircraft (
  shop text not null references shop (id),
  subject text not null,
  registration text not null,
  type text not null,
  model text not null,
  serial text not null,
  built text not null,
  owner text,
  base text,
  reading_day text,
  reading_total_s bigint,
  reading_landings integer,
  reading_number integer,
  last_number integer not null,
  primary key (shop, subject)
);

create table part (
  shop text not null references shop (id),
  subject text not null,
  part text not null,
  hand text not null,
  part_number text,
  serial text,
  stamp text,
  built text,
  sits_in text,
  place text,
  since text,
  last_number integer not null,
  primary key (shop, subject)
);
create index part_sits_in on part (shop, sits_in);

create table fitment (
  shop text not null references shop (id),
  subject text not null,
  number integer not null,
  sits_in text not null,
  place text not null,
  from_day text not null,
  to_day text,
  primary key (shop, number)
);
create index fitment_subject on fitment (shop, subject);

create table directive (
  shop text not null references shop (id),
  directive text not null,
  issue integer not null,
  entry integer not null,
  day text not null,
  adopted_by text not null,
  document text not null,
  primary key (shop, directive, issue)
);

create table letter (
  shop text not null references shop (id),
  letter text not null,
  entry integer not null,
  aircraft text not null,
  directive text not null,
  day text not null,
  pdf_sha256 text not null,
  issued_by text not null,
  primary key (shop, letter)
);

create table mapping (
  shop text not null references shop (id),
  shape text not null,
  entry integer not null,
  mapping text not null,
  primary key (shop, shape)
);

create table answer (
  shop text not null references shop (id),
  part text not null,
  directive text not null,
  issue integer not null,
  action text not null,
  entry integer not null,
  program text not null,
  day text not null,
  touches text[] not null,
  stale boolean not null default false,
  result text not null,
  primary key (shop, part, directive, action)
);

create function drop_invented_shop(in_shop text, at text, by_whom text) returns void language plpgsql as $$
declare gone shop%rowtype;
begin
  select * into gone from shop where id = in_shop for update;
  if not found then raise exception 'no shop %', in_shop; end if;
  if not gone.invented then raise exception 'shop % is real: it is never dropped', in_shop; end if;
  perform set_config('sparwright.dropping', in_shop, true);
  delete from answer where shop = in_shop;
  delete from mapping where shop = in_shop;
  delete from letter where shop = in_shop;
  delete from directive where shop = in_shop;
  delete from fitment where shop = in_shop;
  delete from part where shop = in_shop;
  delete from aircraft where shop = in_shop;
  delete from log where shop = in_shop;
  delete from shop where id = in_shop;
  insert into dropped_shop values (in_shop, gone.name, gone.last_number, gone.last_hash, at, by_whom);
  perform set_config('sparwright.dropping', '', true);
end $$;
