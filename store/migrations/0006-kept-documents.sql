-- Structure maps, floors, teardown jobs and the work recorded on them are read from the log itself, as usage and growth
-- documents are; one index finds all of them.
create index log_kept on log (shop, subject, number) where kind in (
  'usage_basis', 'growth_basis', 'structure_basis', 'floor_basis', 'teardown_basis', 'basis_withdrawn',
  'teardown_work', 'teardown_work_withdrawn'
);
drop index log_bases;
