-- Usage and growth documents that a shop keeps are read from the log itself; found without walking through all of it.
create index log_bases on log (shop, subject, number) where kind in ('usage_basis', 'growth_basis', 'basis_withdrawn');
