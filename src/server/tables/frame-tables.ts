/** What a server knows of itself and has signed. */
export interface FrameTables {
  /** facts of the office by name: its id; on PostgreSQL also the seed of its key and its era, for all its processes */
  office_facts: { name: string; value: string };
  /** heads of the jobs' trees as they were signed, one for each size */
  tree_heads: { job: string; size: number; root: string; at: string; key: string; signature: string };
}
