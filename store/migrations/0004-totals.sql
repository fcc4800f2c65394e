-- Totals of each aircraft and of all that sits in it, as figures, for questions about the whole fleet. Made from the
-- log; stale from the moment an entry of the circle is recorded until they are made again.
create table totals (
  shop text not null references shop (id),
  aircraft text not null,
  -- Newest entry of the circle that is in them.
  entry integer not null,
  stale boolean not null default false,
  -- Why the record is not plain, so that it needs the whole way; null where figures stand.
  why text,
  figures bytea,
  primary key (shop, aircraft)
);
-- Two kilobytes a row: kept in the row as they are.
alter table totals alter column figures set storage external;
alter table totals set (toast_tuple_target = 8160);
create index totals_stale on totals (shop) where stale;
