package org.stockcutting.http.print.paper;

import java.util.List;
import org.stockcutting.http.print.BoardGroup;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;

/**
 * A whole plan as pages to print: what to buy, parts and cautions, one page a board or group of equal boards, six boards a page with
 * marks to chalk, the cut sequence. The same plan on the same paper gives the same bytes.
 */
public final class PlanPdf {

    private static final String SUBSTITUTED =
            "Some letters of this job are not in the typeface of this print; each stands here as \"" + Face.SUBSTITUTE
                    + "\". The marks on the pieces tell parts apart all the same.";

    private PlanPdf() {}

    /** Every page of a plan. */
    public static byte[] plan(Job job, CuttingPlan plan, Paper paper) {
        try (PdfFile file = new PdfFile(name(job))) {
            BuyingPages pages = new BuyingPages(job);
            List<BoardGroup> groups = BoardGroup.of(plan);
            Flow flow = new Flow(file, paper.width(), paper.height());
            pages.shopping(plan, flow);
            pages.parts(plan, flow);
            flow.close();
            boards(job, groups, file, paper);
            new CompactPages(job).print(groups, file, paper);
            if (!plan.derived().cutSequence().isEmpty()) {
                try (Flow sequence = new Flow(file, paper.width(), paper.height())) {
                    new SequencePages(job).print(plan, sequence);
                }
            }
            substituted(file, paper);
            return file.bytes(true);
        }
    }

    /** Only what is taken to the yard: what to buy, and what comes from the rack. */
    public static byte[] buyingList(Job job, CuttingPlan plan, Paper paper) {
        try (PdfFile file = new PdfFile(name(job))) {
            try (Flow flow = new Flow(file, paper.width(), paper.height())) {
                new BuyingPages(job).shopping(plan, flow);
            }
            substituted(file, paper);
            return file.bytes(true);
        }
    }

    private static void boards(Job job, List<BoardGroup> groups, PdfFile file, Paper paper) {
        BoardPages boards = new BoardPages(job);
        for (BoardGroup group : groups) {
            try (Flow lying = new Flow(file, paper.height(), paper.width())) {
                boards.print(group, lying);
            }
        }
    }

    private static void substituted(PdfFile file, Paper paper) {
        if (file.face().hasSubstituted()) {
            try (Flow flow = new Flow(file, paper.width(), paper.height())) {
                flow.heading("About this print");
                flow.paragraph(SUBSTITUTED);
            }
        }
    }

    private static String name(Job job) {
        return job.name().isBlank() ? "Cutting plan" : job.name();
    }
}
