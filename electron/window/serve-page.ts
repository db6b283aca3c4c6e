import { pageFile } from '../loopback/page-files.ts';
import { POLICY_HEADERS } from '../loopback/policy.ts';
import { isOwnAddress } from './page-address.ts';

/** Answers for the page's scheme from the folder of the built page, with the same policy as the loopback host. */
export function pageServer(folder: string): (request: Request) => Response {
  return ({ method, url }) => {
    const file = method === 'GET' && isOwnAddress(url) ? pageFile(folder, new URL(url).pathname) : null;
    if (file === null) return new Response(null, { status: 404, headers: POLICY_HEADERS });
    return new Response(new Uint8Array(file.bytes), {
      headers: { ...POLICY_HEADERS, 'content-type': file.type },
    });
  };
}
