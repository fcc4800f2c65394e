export const KERNELS: readonly string[];
export function built(name: string): Promise<Uint8Array>;
