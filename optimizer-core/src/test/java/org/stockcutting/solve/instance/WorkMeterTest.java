package org.stockcutting.solve.instance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;

class WorkMeterTest {

    private static final long HOUR = 3_600_000_000_000L;

    private static WorkMeter clockOnly(long nanos) {
        return new WorkMeter(Long.MAX_VALUE, System.nanoTime() + nanos, new CancelToken());
    }

    private static WorkMeter steps(long limit) {
        return new WorkMeter(limit, System.nanoTime() + HOUR, new CancelToken());
    }

    private static void exhaust(WorkMeter part) {
        long giveUp = System.nanoTime() + HOUR / 60;
        while (part.spend(1) && System.nanoTime() < giveUp) {
            LockSupport.parkNanos(100_000);
        }
        assertTrue(part.isExhausted());
    }

    @Test
    void sharesOfALimitInStepsAreSteps() {
        WorkMeter meter = steps(1_000);
        assertFalse(meter.isClockOnly());
        WorkMeter head = meter.head(meter.left() / 4);
        assertTrue(head.spend(249));
        assertFalse(head.spend(1));
        assertFalse(head.wasCutShort());
        meter.absorb(head);
        assertEquals(750, meter.left());
        assertFalse(meter.wasCutShort());
    }

    @Test
    void whereOnlyTheClockLimitsAboutOneStepAMicrosecondIsLeft() {
        WorkMeter meter = clockOnly(HOUR);
        assertTrue(meter.isClockOnly());
        long left = meter.left();
        assertTrue(left <= 3_600_000_000L && left > 3_500_000_000L, () -> left + " steps in an hour");
        assertTrue(clockOnly(-1).left() == 0);
    }

    @Test
    void aPartThatTheClockEndsDoesNotEndTheTask() {
        WorkMeter meter = clockOnly(HOUR);
        // A millisecond.
        WorkMeter head = meter.head(1_000);
        exhaust(head);
        assertTrue(head.isCutShort());
        meter.absorb(head);
        assertFalse(meter.isExhausted());
        assertFalse(meter.isCutShort());
        assertTrue(meter.wasCutShort(), "the answer may be another one next time");
        assertTrue(meter.spend(1));
    }

    @Test
    void aTaskWhoseTimeIsUpEndsWithItsPart() {
        WorkMeter meter = clockOnly(1_000_000);
        WorkMeter part = meter.part(Long.MAX_VALUE);
        exhaust(part);
        meter.absorb(part);
        assertTrue(meter.isExhausted());
        assertTrue(meter.isCutShort());
    }

    @Test
    void aCancelEndsAll() {
        CancelToken cancel = new CancelToken();
        WorkMeter meter = new WorkMeter(Long.MAX_VALUE, System.nanoTime() + HOUR, cancel);
        WorkMeter head = meter.head(1_000_000_000L);
        assertTrue(head.spend(1));
        cancel.cancel();
        assertFalse(head.spend(1));
        meter.absorb(head);
        assertTrue(meter.isExhausted());
    }

    @Test
    void aSearchBesideIsCountedButNotAgainstTheLimit() {
        WorkMeter task = new WorkMeter(100, System.nanoTime() + HOUR, new CancelToken());
        WorkMeter part = task.part(60);
        part.spend(10);
        WorkMeter beside = part.beside(100);
        exhaust(beside);
        part.absorbBeside(beside);
        assertTrue(part.spend(49), "the part has its own steps yet");
        task.absorb(part);
        assertTrue(task.left() == 41);
        assertTrue(task.used() == 59 + beside.used());
        assertFalse(task.wasCutShort());
    }

    @Test
    void whereOnlyTheClockLimitsASearchBesideTakesItsTime() {
        WorkMeter task = clockOnly(HOUR);
        WorkMeter beside = task.beside(1_000);
        exhaust(beside);
        task.absorbBeside(beside);
        assertTrue(beside.isCutShort());
        assertTrue(task.wasCutShort());
        assertFalse(task.isExhausted());
    }
}
