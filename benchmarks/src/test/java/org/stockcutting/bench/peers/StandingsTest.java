package org.stockcutting.bench.peers;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stockcutting.job.JobReview;

class StandingsTest {

    private static Result result(String job, String method, long value, long bound, boolean proved) {
        return new Result(
                job,
                "kind",
                method,
                Result.Outcome.COMPLETE,
                BigInteger.valueOf(value),
                BigInteger.valueOf(bound),
                proved,
                0.5,
                1,
                "");
    }

    @Test
    void saysWhereAPeerIsBetter() {
        String text = new Standings(
                        List.of(
                                result("j1", Contest.OURS, 110, 100, false),
                                result("j1", "rival", 105, 100, false),
                                result("j2", Contest.OURS, 100, 100, true),
                                result("j2", "rival", 120, 100, false)),
                        List.of(Contest.OURS, "rival"))
                .text();

        assertThat(text).contains("5.00 %", "10.00 %", "20.00 %", "12.50 %");
        assertThat(text).containsPattern("where a peer is better than ours: \n +j1 \\(rival 105, ours 110\\)");
        assertThat(text).containsPattern("rival +1 +0 +1 +1");
        assertThat(text).doesNotContain("FAULT");
    }

    @Test
    void aTableReadAgainGivesTheSameReport(@TempDir Path folder) throws Exception {
        Result none = new Result(
                "j2", "kind", "rival", Result.Outcome.NOTHING, null, BigInteger.TEN, false, 0, 1.5, "no, \"none\"");
        List<Result> results = List.of(
                result("j1", Contest.OURS, 110, 100, false),
                result("j1", "rival", 105, 100, false),
                result("j2", Contest.OURS, 10, 10, true),
                none);
        Path csv = folder.resolve("peers-2026-01-31.csv");
        new PeersTable(3, 7, results).write(csv);

        assertThat(PeersTable.read(csv)).isEqualTo(new PeersTable(3, 7, results));
        assertThat(PeersReport.markdown(csv, "2026-01-31"))
                .contains("measured on 2026-01-31, 2 jobs", "peers --seconds 3 --seed 7", "peers-2026-01-31.csv")
                .contains("| ours | 2 of 2 | 5.00 % | 10.00 % | 50 % | 50 % |")
                .contains("| rival | 1 of 2 | 5.00 % | 5.00 % | 0 % | 0 % | 0.50 | 0, 0, 1 |")
                .contains("| kind | 5.00 % | 5.00 % (1 of 2) |")
                .contains("better than ours on 1: j1 (rival 105, ours 110).");
    }

    @Test
    void resultsThatContradictEachOtherAreFaults() {
        Standings belowBound = new Standings(
                List.of(result("j1", Contest.OURS, 100, 100, true), result("j1", "rival", 99, 100, false)),
                List.of(Contest.OURS, "rival"));
        assertThat(belowBound.contradictions())
                .containsExactly("rival is below what ours proved on j1", "rival is below the bound on j1");

        Standings belowProof = new Standings(
                List.of(result("j1", Contest.OURS, 101, 90, false), result("j1", "rival", 105, 90, true)),
                List.of(Contest.OURS, "rival"));
        assertThat(belowProof.contradictions()).containsExactly("ours is below what rival proved on j1");
        assertThat(belowProof.text()).contains("FAULT ours is below");
    }

    @Test
    void builtInJobsAre40Of6KindsAndTheSameEachTime() {
        List<PeerJobs.Named> jobs = PeerJobs.all(1);

        assertThat(jobs).hasSize(40);
        assertThat(jobs.stream().map(PeerJobs.Named::kind).distinct()).hasSize(6);
        assertThat(jobs).isEqualTo(PeerJobs.all(1)).isNotEqualTo(PeerJobs.all(2));
        assertThat(jobs)
                .allSatisfy(job -> assertThat(JobReview.review(job.job())).isEmpty());
    }

    /** Falkenauer 1996: 120 items, sizes 20 to 100, bins of 150. */
    @Test
    void uniformJobsFollowThePublishedRule() {
        List<PeerJobs.Named> uniform = PeerJobs.all(1).stream()
                .filter(job -> job.kind().equals(PeerJobs.Kind.UNIFORM.word()))
                .toList();

        assertThat(uniform).hasSize(7).allSatisfy(named -> {
            assertThat(named.job().parts().stream().mapToInt(p -> p.quantity()).sum())
                    .isEqualTo(120);
            assertThat(named.job().parts())
                    .allSatisfy(part -> assertThat(part.length().nanometres()).isBetween(20_000_000L, 100_000_000L));
            assertThat(named.job().forSale().get(0).length().nanometres()).isEqualTo(150_000_000L);
        });
    }
}
