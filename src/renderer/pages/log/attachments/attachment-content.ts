/** The bytes of an attachment as an address that a picture can be drawn from. */
import { useEffect, useState } from 'react';
import type { Attachment } from '../../../../notebook/index.ts';
import type { Problem } from '../../../../quantity/index.ts';
import { useNotebook, useSurface } from '../../../store/context.ts';

export interface PictureAddress {
  readonly address: string | undefined;
  readonly problem: Problem | undefined;
}

const WAITING: PictureAddress = { address: undefined, problem: undefined };

/** Reads the picture while the component is there; the address is given back when it goes. */
export function usePicture({ sha256, mediaType }: Attachment): PictureAddress {
  const { desk } = useSurface();
  const store = useNotebook();
  const [picture, setPicture] = useState(WAITING);

  useEffect(() => {
    let address: string | undefined;
    let wanted = true;
    setPicture(WAITING);
    void desk['attachment.read']({ session: store.getState().session, sha256 }).then((read) => {
      if (!wanted) return;
      if (!read.ok) {
        setPicture({ address: undefined, problem: read.problem });
        return;
      }
      address = URL.createObjectURL(new Blob([new Uint8Array(read.value)], { type: mediaType }));
      setPicture({ address, problem: undefined });
    });
    return () => {
      wanted = false;
      if (address !== undefined) URL.revokeObjectURL(address);
    };
  }, [desk, store, sha256, mediaType]);
  return picture;
}
