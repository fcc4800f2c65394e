import { BasisListPage } from '../../parts/basis/basis-list-page.tsx';

export const UsageListPage = ({ shop }: { shop: string }) => <BasisListPage shop={shop} word="usage" title="Usage" />;
