import { openApplication } from '#application/application.ts';
import type { Application } from '#application/application.ts';

/** Opens a workspace as a user does; a new one begins with the shipped content. */
export const openOwnWorkspace = (file: string): Promise<Application> => openApplication({ file });
