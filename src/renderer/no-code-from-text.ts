/**
 * The content policy lets no text become code; schemas would try to, to be faster, and be reported for it. Imported
 * before anything else, because they try while they are being made.
 */
import { z } from 'zod';

z.config({ jitless: true });
