namespace Shaftwright.Truing.Pressing;

/// <summary>Where the press stops. Every one is common practice, no source, unless it says otherwise: set on the cautious side,
/// to be replaced by the data of whoever has tested the steel.</summary>
public static class PressLimits
{
    /// <summary>Chance that one stroke ends bent the other way by more than the limit that is accepted when a stroke is chosen.</summary>
    public const double ChanceTooFar = 0.02;

    /// <summary>Largest strain at the surface in one stroke.</summary>
    public const double Strain = 0.02;

    /// <summary>Most strain left at the surface by all strokes at one place, forth and back counted alike.</summary>
    public const double StrainKept = 0.03;

    /// <summary>Strokes after which a shaft is given up, or taken to another press.</summary>
    public const int Strokes = 20;

    /// <summary>Strokes after which a shaft with a hard case between the blocks is pressed no more: repeated loading cracks the
    /// case. That few strokes are stressed is from published abstracts on case-hardened shafts; the number is common practice, no source.</summary>
    public const int StrokesOnCase = 12;

    /// <summary>Strokes in a row that were to leave something and left nothing: then the shaft is not what it is taken for.</summary>
    public const int StrokesWithoutResponse = 8;

    /// <summary>Share of the case's own yield that the surface of a hardened stretch may see while another place is pressed.</summary>
    public const double CaseShare = 0.6;

    /// <summary>Clear of weld toes and sleeve ends: blocks and ram, mm.</summary>
    public const double ToeClear = 12;

    /// <summary>Clear of splines, grooves, boot seats and shoulders: blocks and ram, mm.</summary>
    public const double FeatureClear = 3;

    /// <summary>Shortest span in diameters: shorter ones shear and dent more than they bend.</summary>
    public const double SpanInDiameters = 5;

    /// <summary>Span of a press when nobody said, mm: shortest and longest.</summary>
    public const double UsualShortest = 120,
        UsualLongest = 400;

    /// <summary>Largest give of press, blocks and caps that is reckoned with, mm/N: 20 kN a millimetre.</summary>
    public const double MostGive = 5e-5;

    /// <summary>Standard uncertainty of finding contact again, mm: a strip of paper that begins to drag.</summary>
    public const double Contact = 0.03;

    /// <summary>Share by which a set may differ from the model's: steel that yields by and by, friction at the blocks.</summary>
    public const double Model = 0.15;

    /// <summary>Slope beyond yield as a share of Young's modulus: 2 GPa. Tempered and normalised medium-carbon steels lie between
    /// nothing and twice that over the first per cent of strain.</summary>
    public const double Hardening = 0.01;

    /// <summary>Share of the depth by which a stroke across or against the one before is known worse: bent steel yields sooner on the
    /// way back (Bauschinger) and beside it, and no model here says how much.</summary>
    public const double TurnedBack = 0.04;

    /// <summary>Full length that is taken when the supports under the dial are not known, mm. Longer than most shafts, so that a bend
    /// is taken to show more than it does and the stroke comes out short.</summary>
    public const double UnknownLength = 900;
}
