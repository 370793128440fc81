/** Input that makes no sense to plan with. Names the field and the reason; nothing is planned. */
export class PlanRefusal extends Error {
  readonly field: string;
  readonly reason: string;
  constructor(field: string, reason: string) {
    super(`${field}: ${reason}`);
    this.name = 'PlanRefusal';
    this.field = field;
    this.reason = reason;
  }
}
