using Quarterlight.Quantities;

namespace Quarterlight.Radio.Law;

/// <summary>A country or region whose rules are known here.</summary>
/// <param name="Code">ISO 3166-1 alpha-2 code, or EU for the CEPT recommendation.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Authority">Who to ask for a licence or an answer.</param>
/// <param name="FmDeEmphasisMicroseconds">De-emphasis of FM broadcasting there: 50 or 75.</param>
/// <param name="FmLowMHz">Lowest FM broadcast channel centre in MHz.</param>
/// <param name="FmHighMHz">Highest FM broadcast channel centre in MHz.</param>
/// <param name="FmRasterKHz">Spacing of FM broadcast channel centres in kHz.</param>
/// <param name="Provenance">Where the broadcast figures come from.</param>
public sealed record CountryLaw(
    string Code, string Name, string Authority, double FmDeEmphasisMicroseconds, double FmLowMHz, double FmHighMHz, double FmRasterKHz, Provenance Provenance);
