import { createContext, useContext } from 'react';
import type { Scene } from '../../../sheets/model.ts';

/** The drawing that the server made of the document as it stands. */
export const BasisPictureContext = createContext<Scene | null>(null);
export const useBasisPicture = (): Scene | null => useContext(BasisPictureContext);
