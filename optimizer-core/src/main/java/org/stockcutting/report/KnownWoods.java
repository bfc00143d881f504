package org.stockcutting.report;

import java.math.BigDecimal;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.job.OwnWood;
import org.stockcutting.material.Density;
import org.stockcutting.material.Wood;
import org.stockcutting.material.WoodTable;

/** What is known about the materials of a job: the maker's own figures win over the table's. */
public final class KnownWoods {

    private final Job job;

    public KnownWoods(Job job) {
        this.job = job;
    }

    Optional<Wood> wood(String material) {
        OwnWood own = job.terms().woods().get(material);
        return WoodTable.standard().find(own == null || own.like() == null ? material : own.like());
    }

    /** Density of the wood as it is sold dry, or null where neither job nor table knows it. */
    public @Nullable Density density(String material) {
        OwnWood own = job.terms().woods().get(material);
        if (own != null && own.density() != null) {
            return own.density();
        }
        return wood(material).map(Wood::density).orElse(null);
    }

    /** The coefficient of flat-sawn boards: the greater one. */
    @Nullable BigDecimal movement(String material) {
        OwnWood own = job.terms().woods().get(material);
        if (own != null && own.movement() != null) {
            return own.movement();
        }
        return wood(material).map(Wood::tangential).orElse(null);
    }

    /** The wood whose density was taken: the table's name, or the material's own where the maker gave it. */
    String weighedAs(String material) {
        OwnWood own = job.terms().woods().get(material);
        return own != null && own.density() != null ? material : name(material);
    }

    /** The wood whose movement was taken. */
    String movedAs(String material) {
        OwnWood own = job.terms().woods().get(material);
        return own != null && own.movement() != null ? material : name(material);
    }

    private String name(String material) {
        return wood(material).map(Wood::name).orElse(material);
    }
}
