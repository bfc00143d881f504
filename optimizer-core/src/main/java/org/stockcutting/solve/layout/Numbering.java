package org.stockcutting.solve.layout;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.job.Job;
import org.stockcutting.job.SawLimits;
import org.stockcutting.part.Making;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/**
 * Gives every place of an answer its part, number and member.
 *
 * <p>Free pieces are dealt over all copies of a pattern, so that copies stay equal where they can ({@link Dealing}). Staves from different
 * boards are dealt round: with at most Q staves a board and Q panels, the j-th stave goes to panel j mod Q, so no board gives two to
 * one panel. Groups are dealt set by set, board by board. Staves and plies of a part that cannot be completed are taken off again.
 */
public final class Numbering {

    private final Job job;
    private final Instance instance;
    private final List<List<RoughPiece>> members;
    private final List<Copy> copies = new ArrayList<>();
    private final Map<Place, Label> labels = new HashMap<>();

    /** One board to be cut: which pattern use it belongs to, and the item of each place. */
    private record Copy(StockItem stock, Region region, List<Integer> itemOfPlace) {}

    private record Place(int copy, int place) {}

    private Numbering(Job job, Instance instance, List<List<RoughPiece>> members) {
        this.job = job;
        this.instance = instance;
        this.members = members;
    }

    /**
     * Boards with labels.
     *
     * @param members rough pieces behind each item type
     * @param stock stock item behind each stock type
     * @param unitX nanometres of a unit along x
     * @param unitY nanometres of a unit along y
     * @param asCut true to keep every rest where the engine has it
     */
    public static List<Board> number(
            Job job,
            Instance instance,
            List<List<RoughPiece>> members,
            List<StockItem> stock,
            long unitX,
            long unitY,
            List<Answer.PatternUse> uses,
            boolean asCut) {
        Numbering numbering = new Numbering(job, instance, members);
        List<Integer> firstCopy = new ArrayList<>();
        List<RoughPiece> pieceOfItem = members.stream().map(type -> type.get(0)).toList();
        for (Answer.PatternUse use : uses) {
            StockItem item = stock.get(use.stock());
            Region region = new RegionScaler(item, job.shop(), unitX, unitY, pieceOfItem, asCut).scale(use.layout());
            List<Integer> items =
                    Board.places(region).stream().map(Region.Item::item).toList();
            firstCopy.add(numbering.copies.size());
            for (int c = 0; c < use.copies(); c++) {
                numbering.copies.add(new Copy(item, region, items));
            }
        }
        numbering.labelAll(uses, firstCopy);
        return numbering.boards();
    }

    /** How many places of each item type keep a label: all but the staves and plies of parts that cannot be completed. */
    public static int[] finished(
            Job job,
            Instance instance,
            List<List<RoughPiece>> members,
            List<StockItem> stock,
            List<Answer.PatternUse> uses) {
        Numbering numbering = new Numbering(job, instance, members);
        List<Integer> firstCopy = new ArrayList<>();
        for (Answer.PatternUse use : uses) {
            List<Integer> items =
                    Board.places(use.layout()).stream().map(Region.Item::item).toList();
            firstCopy.add(numbering.copies.size());
            for (int c = 0; c < use.copies(); c++) {
                numbering.copies.add(new Copy(stock.get(use.stock()), use.layout(), items));
            }
        }
        numbering.labelAll(uses, firstCopy);
        int[] finished = new int[members.size()];
        for (Place place : numbering.labels.keySet()) {
            finished[numbering.copies.get(place.copy()).itemOfPlace().get(place.place())]++;
        }
        return finished;
    }

    /** True if a saw limit or a nail may forbid cuts that pieces need once they are pushed together. */
    public static boolean mayForbid(Job job) {
        return !job.shop().limits().equals(SawLimits.NONE)
                || job.parts().stream().anyMatch(part -> part.selection().place() != null)
                || job.onHand().stream().anyMatch(item -> item.zones().stream().anyMatch(Zone::metal));
    }

    private void labelAll(List<Answer.PatternUse> uses, List<Integer> firstCopy) {
        Dealing dealing =
                new Dealing(uses.stream().mapToInt(Answer.PatternUse::copies).toArray());
        boolean[] grouped = new boolean[members.size()];
        for (Instance.Group group : instance.groups()) {
            labelGroup(group);
            group.items().forEach(item -> grouped[item] = true);
        }
        for (int item = 0; item < members.size(); item++) {
            if (grouped[item]) {
                continue;
            }
            if (members.get(item).get(0).part().making() instanceof Making.GlueUp glueUp
                    && glueUp.from() == Making.StaveSource.DIFFERENT_BOARDS) {
                labelRound(item);
            } else {
                labelFree(item, uses, firstCopy, dealing);
            }
        }
        dropBroken();
    }

    /** Panels with staves of several widths are only whole with all of them. */
    private void dropBroken() {
        Map<String, Integer> staves = new HashMap<>();
        labels.values().forEach(label -> staves.merge(copyOf(label), 1, Integer::sum));
        labels.values()
                .removeIf(label -> staves.getOrDefault(copyOf(label), 0)
                        < label.piece().members().of());
    }

    private static String copyOf(Label label) {
        return label.number() + " " + label.piece().part().id();
    }

    private void labelFree(int item, List<Answer.PatternUse> uses, List<Integer> firstCopy, Dealing dealing) {
        List<Dealing.Spot> spots = new ArrayList<>();
        int places = 0;
        for (int u = 0; u < uses.size(); u++) {
            List<Integer> items = copies.get(firstCopy.get(u)).itemOfPlace();
            for (int p = 0; p < items.size(); p++) {
                if (items.get(p) == item) {
                    spots.add(new Dealing.Spot(u, p));
                    places += uses.get(u).copies();
                }
            }
        }
        List<RoughPiece> parts = members.get(item);
        int[] wanted = new int[parts.size()];
        for (int m = 0; m < wanted.length; m++) {
            RoughPiece piece = parts.get(m);
            int demand = job.demand(piece.part()) / piece.part().gang();
            wanted[m] = Math.min(demand, places / piece.perPart()) * piece.perPart();
            places -= wanted[m];
        }
        int[][] owners = dealing.deal(spots, wanted);
        int[] given = new int[wanted.length];
        for (int s = 0; s < owners.length; s++) {
            for (int c = 0; c < owners[s].length; c++) {
                int owner = owners[s][c];
                if (owner != Dealing.NOBODY) {
                    RoughPiece piece = parts.get(owner);
                    int unit = given[owner]++;
                    labels.put(
                            new Place(
                                    firstCopy.get(spots.get(s).pattern()) + c,
                                    spots.get(s).place()),
                            label(piece, unit / piece.perPart() * piece.part().gang() + 1, unit % piece.perPart() + 1));
                }
            }
        }
    }

    /** As many panels as come out whole when every board gives at most one stave to each of them. */
    private void labelRound(int item) {
        RoughPiece piece = members.get(item).get(0);
        int placed = 0;
        for (Copy copy : copies) {
            placed += (int) copy.itemOfPlace().stream().filter(i -> i == item).count();
        }
        int panels = Math.min(job.demand(piece.part()), placed / piece.perPart());
        while (panels > 0) {
            List<Place> places = placesOf(item, panels);
            if (places.size() >= panels * piece.perPart()) {
                for (int j = 0; j < panels * piece.perPart(); j++) {
                    labels.put(places.get(j), label(piece, j % panels + 1, j / panels + 1));
                }
                return;
            }
            panels--;
        }
    }

    private List<Place> placesOf(int item, int mostPerBoard) {
        List<Place> places = new ArrayList<>();
        for (int c = 0; c < copies.size(); c++) {
            List<Integer> items = copies.get(c).itemOfPlace();
            int taken = 0;
            for (int p = 0; p < items.size(); p++) {
                if (items.get(p) == item && taken < mostPerBoard) {
                    places.add(new Place(c, p));
                    taken++;
                }
            }
        }
        return places;
    }

    private void labelGroup(Instance.Group group) {
        int set = 0;
        for (int c = 0; c < copies.size(); c++) {
            int sets = 0;
            for (int g = 0; g < group.items().size(); g++) {
                RoughPiece piece = members.get(group.items().get(g)).get(0);
                List<Integer> places = placesOn(c, group.items().get(g));
                sets = places.size() / group.perSet().get(g);
                int perSet = group.perSet().get(g);
                for (int j = 0; j < places.size(); j++) {
                    int unit = (set + j / perSet) * perSet + j % perSet;
                    int number = unit / piece.perPart() + 1;
                    labels.put(new Place(c, places.get(j)), label(piece, number, unit % piece.perPart() + 1));
                }
            }
            set += sets;
        }
    }

    private List<Integer> placesOn(int copy, int item) {
        List<Integer> places = new ArrayList<>();
        List<Integer> items = copies.get(copy).itemOfPlace();
        for (int p = 0; p < items.size(); p++) {
            if (items.get(p) == item) {
                places.add(p);
            }
        }
        return places;
    }

    private static Label label(RoughPiece piece, int number, int member) {
        return new Label(
                piece,
                number,
                piece.kind() == RoughPiece.Kind.WHOLE ? 0 : piece.members().before() + member);
    }

    private List<Board> boards() {
        List<Board> boards = new ArrayList<>();
        for (int c = 0; c < copies.size(); c++) {
            int copy = c;
            @Nullable Board board = RegionFilter.apply(
                    copies.get(c).stock(), copies.get(c).region(), place -> labels.get(new Place(copy, place)));
            if (board != null) {
                boards.add(board);
            }
        }
        return boards;
    }
}
