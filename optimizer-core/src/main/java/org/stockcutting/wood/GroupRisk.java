package org.stockcutting.wood;

import java.util.List;

/**
 * How many boards are enough for parts that share their wood and nothing with the rest of the job.
 *
 * @param parts ids of the parts, sorted
 * @param planned what the plan buys for them
 * @param extra id of the stock of which more are taken: the longest that the plan buys and that can still be had
 * @param models what each bought stock is expected to be like
 * @param rows the chance for each number of boards, from the plan's number on
 * @param take extra boards to take
 */
public record GroupRisk(
        List<String> parts, List<Planned> planned, String extra, List<KnotModel> models, List<Row> rows, int take) {

    public GroupRisk {
        parts = List.copyOf(parts);
        planned = List.copyOf(planned);
        models = List.copyOf(models);
        rows = List.copyOf(rows);
    }

    /**
     * A line of the plan's buying list.
     *
     * @param stock id of the stock
     * @param quantity boards that the plan needs
     */
    public record Planned(String stock, int quantity) {}

    /**
     * One number of boards.
     *
     * @param boards boards bought, all kinds together
     * @param more how many of them are beyond the plan
     * @param chance chance that the parts can be cut from them
     */
    public record Row(int boards, int more, Chance chance) {}

    /** Boards that the plan needs. */
    public int needed() {
        return planned.stream().mapToInt(Planned::quantity).sum();
    }
}
