package org.stockcutting.bench.peers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/** Every method on jobs whose least value can be worked out by hand. */
class PeersTest {

    private static StockItem.ForSale sale(Form form, String length, String width, String price) {
        Price each = new Price(new BigDecimal(price), Currency.getInstance("USD"), PriceUnit.PIECE);
        return new StockItem.ForSale(
                "s" + length,
                form,
                null,
                Length.inches(length),
                Length.inches(width),
                Length.inches("1"),
                "wood",
                Grain.LENGTH,
                null,
                null,
                each);
    }

    /** 3 x 50 and 3 x 40 with a kerf of 1/8 on 96: each 50 needs a board and takes a 40 beside it, 90-1/8 in all: 3 boards of $4. */
    private static Job pairs() {
        return JobBuilder.inches("pairs")
                .part("a", 3, "50", "3", "1")
                .part("b", 3, "40", "3", "1")
                .stock(sale(Form.BOARD, "96", "3", "4.00"))
                .build();
    }

    /** 2 x 60: on 96 one each, $10; on 121 both with their kerf, $7; on 120 only one. */
    private static Job twoLengths() {
        return JobBuilder.inches("two lengths")
                .part("a", 2, "60", "3", "1")
                .stock(sale(Form.BOARD, "96", "3", "5.00"))
                .stock(sale(Form.BOARD, "121", "3", "7.00"))
                .stock(sale(Form.BOARD, "120", "3", "6.00"))
                .build();
    }

    /** 2 x 60 once more, on 120 at $6 and 121 at $7: the second 60 has no room on 120, and both on 121 are cheaper than two boards. */
    private static Job dearButLong() {
        return JobBuilder.inches("dear but long")
                .part("a", 2, "60", "3", "1")
                .stock(sale(Form.BOARD, "120", "3", "6.00"))
                .stock(sale(Form.BOARD, "121", "3", "7.00"))
                .build();
    }

    /**
     * 6 x 20 with a board of 70 on hand, bad from 30 to 40: its two stretches of 30 give one piece each; four are left for boards of 64 at
     * $3, which hold three (60-1/4 with kerfs): two boards. Without the zone the board on hand would give three, and one board would do.
     */
    private static Job zoned() {
        Zone zone = new Zone(
                Length.inches("30"), Length.inches("40"), null, null, Zone.Severity.UNUSABLE, Zone.Face.BOTH, false);
        return JobBuilder.inches("zoned")
                .part("a", 6, "20", "3", "1")
                .stock(new StockItem.OnHand(
                        "rack",
                        Form.BOARD,
                        null,
                        Length.inches("70"),
                        Length.inches("3"),
                        Length.inches("1"),
                        "wood",
                        Grain.LENGTH,
                        null,
                        1,
                        List.of(zone)))
                .stock(sale(Form.BOARD, "64", "3", "3.00"))
                .build();
    }

    /** 8 x (23 by 23): two rows of four with kerfs of 1/8 are 92-3/8 by 46-1/8, so one sheet of 96 by 48 holds them all, and $50 is due. */
    private static Job squares() {
        return JobBuilder.inches("squares")
                .part("a", 8, "23", "23", "1")
                .stock(sale(Form.SHEET, "96", "48", "50.00"))
                .build();
    }

    static Stream<Arguments> everyone() {
        List<Arguments> cases = new ArrayList<>();
        for (Peer peer : Contest.everyone()) {
            cases.add(Arguments.of(peer.name(), peer, pairs(), 1200L));
            cases.add(Arguments.of(peer.name(), peer, dearButLong(), 700L));
            cases.add(Arguments.of(peer.name(), peer, twoLengths(), 700L));
            cases.add(Arguments.of(peer.name(), peer, zoned(), 600L));
            if (!(peer instanceof ArcFlowPeer)) {
                cases.add(Arguments.of(peer.name(), peer, squares(), 5000L));
            }
        }
        return cases.stream();
    }

    @ParameterizedTest(name = "{0} on {2}")
    @MethodSource("everyone")
    void hitsTheValueKnownByHand(String name, Peer peer, Job job, long cents) {
        assumeTrue(!name.startsWith("CP-SAT") || CpSat.missing().isEmpty(), "no OR-Tools for this machine");

        List<Result> results = new Contest(List.of(peer), 1, 1).run(new PeerJobs.Named(job.name(), "hand", job));

        for (Result result : results) {
            assertThat(result.remark()).as(result.method()).isEmpty();
            assertThat(result.outcome()).as(result.method()).isEqualTo(Result.Outcome.COMPLETE);
            assertThat(result.value()).as(result.method()).isEqualTo(BigInteger.valueOf(cents));
            assertThat(result.isAtBound()).as(result.method()).isTrue();
        }
    }

    @Test
    void exactModelsProveWhatTheyFind() {
        assumeTrue(CpSat.missing().isEmpty(), "no OR-Tools for this machine");
        for (Peer peer : List.of(new AssignmentPeer(), new ArcFlowPeer())) {
            List<Result> results = new Contest(List.of(peer), 5, 1).run(new PeerJobs.Named("pairs", "hand", pairs()));
            assertThat(results.get(1).proved()).as(peer.name()).isTrue();
        }
    }

    /** A plan that has a piece more on a board than there is room for must never count, however it is claimed. */
    @Test
    void refusesAPlanThatDoesNotFit() {
        Peer liar = new Peer() {
            @Override
            public String name() {
                return "liar";
            }

            @Override
            public Optional<String> declines(Instance instance) {
                return Optional.empty();
            }

            @Override
            public Found solve(Instance instance, long nanos, long seed) {
                LineFill board = new LineFill(instance, 0, Fill.Choice.FIRST);
                for (int n = 0; n < 3; n++) {
                    board.addTo(0, 0);
                    board.addTo(0, 1);
                }
                return new Found(Load.uses(List.of(board)), 0, true);
            }
        };

        Result result = new Contest(List.of(liar), 1, 1)
                .run(new PeerJobs.Named("pairs", "hand", pairs()))
                .get(1);

        assertThat(result.outcome()).isEqualTo(Result.Outcome.REFUSED);
        assertThat(result.value()).isNull();
    }

    @Test
    void arcFlowDeclinesSheets() {
        assumeTrue(CpSat.missing().isEmpty(), "no OR-Tools for this machine");
        Result result = new Contest(List.of(new ArcFlowPeer()), 1, 1)
                .run(new PeerJobs.Named("squares", "hand", squares()))
                .get(1);
        assertThat(result.outcome()).isEqualTo(Result.Outcome.DECLINED);
    }
}
