package org.stockcutting.job;

import java.util.EnumSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.RandomBoards;

/** Reviews boards of random size; in documents they stand behind everything else for sale. */
final class RandomReview {

    /** What a volume can be priced by. */
    private static final Set<PriceUnit> VOLUMES =
            EnumSet.of(PriceUnit.BOARD_FOOT, PriceUnit.THOUSAND_BOARD_FEET, PriceUnit.CUBIC_METRE);

    private final Job job;
    private final Findings findings;
    private final StockReview stock;

    RandomReview(Job job, Findings findings) {
        this.job = job;
        this.findings = findings;
        this.stock = new StockReview(job, findings);
    }

    void review() {
        for (int i = 0; i < job.random().size(); i++) {
            boards("/stock/" + (job.forSale().size() + i), job.random().get(i));
        }
    }

    private void boards(String at, RandomBoards boards) {
        stock.common(at, boards.largest(null));
        findings.positive(at + "/leastLength", boards.leastLength());
        findings.positive(at + "/leastWidth", boards.leastWidth());
        range(at, "length", "leastLength", boards.leastLength(), boards.length());
        range(at, "width", "leastWidth", boards.leastWidth(), boards.width());
        if (boards.nominal() != null && boards.nominal().nominalWidth() != null) {
            findings.add(
                    at + "/nominal",
                    FaultCode.CONFLICT,
                    boards.nominal().name(),
                    "a trade thickness such as 4/4",
                    "Boards " + boards.id() + " are of random width, and "
                            + boards.nominal().name() + " names a width; give a thickness alone.",
                    at + "/form");
        }
        Length car = job.shop().carLength();
        if (car != null && boards.leastLength().isMoreThan(car)) {
            findings.add(
                    at + "/leastLength",
                    FaultCode.OUT_OF_RANGE,
                    findings.say(boards.leastLength()),
                    "at most " + findings.say(car),
                    "Even the shortest of " + boards.id() + " is longer than the " + findings.say(car)
                            + " that fit the car; offer shorter boards or leave carLength out.",
                    "/shop/carLength");
        }
        price(at, boards.id(), boards.price());
    }

    private void range(String at, String most, String least, Length from, Length to) {
        if (from.isMoreThan(to)) {
            findings.add(
                    at + "/" + least,
                    FaultCode.OUT_OF_RANGE,
                    findings.say(from),
                    "at most " + findings.say(to),
                    "The least " + most + " is " + findings.say(from) + ", more than the greatest, " + findings.say(to)
                            + "; exchange them.",
                    at + "/" + most);
        }
    }

    private void price(String at, String id, @Nullable Price price) {
        if (price == null) {
            return;
        }
        stock.price(at, id, price);
        if (!VOLUMES.contains(price.per())) {
            findings.add(
                    at + "/price/per",
                    FaultCode.CONFLICT,
                    price.per().word(),
                    "board-foot, thousand-board-feet or cubic-metre",
                    "Boards of random size such as " + id + " are bought by volume; give a price per board-foot,"
                            + " thousand-board-feet or cubic-metre.",
                    at + "/form");
        }
    }
}
