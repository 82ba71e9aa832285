namespace AirColumn;

/// <summary>The source of the constants of an <see cref="Air"/>.</summary>
public enum AirModel
{
    /// <summary>
    /// The formulas of IEC 61094-2:2009, Annex F (iec61094-2): speed of sound and heat capacity ratio after Cramer
    /// (cramer1993), density after CIPM-2007 (picard2008), and formulas for viscosity, conductivity and heat
    /// capacity.
    /// </summary>
    Iec61094,

    /// <summary>
    /// Nitrogen, oxygen, argon, carbon dioxide and water vapour with their own heat capacities (mcbride2002) and the forces
    /// between their molecules (hyland1983, tsonopoulos1974): good for all air that <see cref="AirState"/> accepts.
    /// </summary>
    GasMixture,

    /// <summary>The caller gave the constants; no model was used.</summary>
    Constants,
}
