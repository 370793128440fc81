import { openApplication } from '#application/application.ts';
import type { Application } from '#application/application.ts';
import { shippedContent } from '#application/shipped-content.ts';

/** Opens a workspace as a user does: a new one begins with the starting classes and the sample venue. */
export const openOwnWorkspace = (file: string): Promise<Application> => openApplication({ file, firstContent: shippedContent });
