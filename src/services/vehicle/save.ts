import { done } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const saveVehicle: Service<'vehicle/save'> = ({ store }, { vehicle }) =>
  store.write(async (contents) => {
    await contents.vehicles.save(vehicle);
    return done(vehicle);
  });
