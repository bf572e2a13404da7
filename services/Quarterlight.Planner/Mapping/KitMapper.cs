using Quarterlight.Cabin;
using Quarterlight.Placement;
using AcousticPattern = Quarterlight.Acoustics.PolarPattern;

namespace Quarterlight.Planner.Mapping;

/// <summary>Kits and microphones.</summary>
internal static class KitMapper
{
    private static readonly Quantities.ValidRange s_tube = new(0.05, 0.6, "m");

    public static Kit ToDomain(V1.Kit kit, string prefix, FieldReader reader)
    {
        var microphones = new List<Microphone>();
        for (int m = 0; m < kit.Microphones.Count; m++)
        {
            microphones.Add(ToDomain(kit.Microphones[m], $"{prefix}.microphones[{m}]", reader));
        }

        var stock = new Dictionary<Fixings, int>();
        for (int f = 0; f < kit.Fixings.Count; f++)
        {
            V1.FixingStock row = kit.Fixings[f];
            string at = $"{prefix}.fixings[{f}]";
            Fixings fixing = FixingMapper.ToDomain(row.Fixing, $"{at}.fixing", reader);
            KitRules.FixingCount.Check($"{at}.count", row.Count, reader.Violations);
            if (fixing != Fixings.None && !stock.TryAdd(fixing, row.Count))
            {
                reader.Add($"{at}.fixing", "this fixing is listed twice", "List each fixing once with its count");
            }
        }

        if (kit.LinkGear is { } gear)
        {
            LinkMapper.CheckGear(gear, $"{prefix}.link_gear", reader);
        }

        ChannelMapper.CheckKept(kit.WirelessTransmitters, $"{prefix}.wireless_transmitters", reader);
        LevelMapper.CheckKept(kit, prefix, reader);
        RunTimeMapper.CheckKept(kit, prefix, reader);
        var domain = new Kit { Microphones = microphones, FixingCounts = stock, RecorderInputCount = kit.RecorderInputCount };
        reader.Violations.AddRange(KitRules.Validate(domain, prefix).Where(v => !v.Field.Contains(".fixings[", StringComparison.Ordinal)));
        return domain;
    }

    private static Microphone ToDomain(V1.Microphone m, string at, FieldReader reader)
    {
        reader.Id($"{at}.id", m.Id);
        reader.DisplayName($"{at}.display_name", m.DisplayName);
        Fixings fixings = Fixings.None;
        for (int f = 0; f < m.Fixings.Count; f++)
        {
            fixings |= FixingMapper.ToDomain(m.Fixings[f], $"{at}.fixings[{f}]", reader);
        }

        return new Microphone
        {
            Id = m.Id,
            DisplayName = m.DisplayName,
            Pattern = Pattern(m, at, reader),
            BodyLengthM = m.BodyLengthM,
            BodyDiameterM = m.BodyDiameterM,
            SensitivityMvPerPa = m.SensitivityMvPerPa,
            SelfNoiseDba = m.SelfNoiseDba,
            MaxLevelDb = m.MaxLevelDb,
            Fixings = fixings,
            Count = m.Count,
        };
    }

    private static AcousticPattern Pattern(V1.Microphone m, string at, FieldReader reader)
    {
        if (m.HasTubeLengthM && m.Pattern != V1.PolarPattern.InterferenceTube)
        {
            reader.Add($"{at}.tube_length_m", "only an interference tube has a tube", "Leave it out, or choose the pattern InterferenceTube");
        }

        switch (m.Pattern)
        {
            case V1.PolarPattern.Omni: return AcousticPattern.Omni;
            case V1.PolarPattern.Subcardioid: return AcousticPattern.Subcardioid;
            case V1.PolarPattern.Cardioid: return AcousticPattern.Cardioid;
            case V1.PolarPattern.Supercardioid: return AcousticPattern.Supercardioid;
            case V1.PolarPattern.Hypercardioid: return AcousticPattern.Hypercardioid;
            case V1.PolarPattern.FigureEight: return AcousticPattern.FigureEight;
            case V1.PolarPattern.InterferenceTube:
                return s_tube.Check($"{at}.tube_length_m", m.HasTubeLengthM ? m.TubeLengthM : double.NaN, reader.Violations)
                    ? AcousticPattern.InterferenceTube(m.TubeLengthM)
                    : AcousticPattern.Supercardioid;
            default:
                reader.Add($"{at}.pattern", "no polar pattern is chosen", "Choose one of: Omni, Subcardioid, Cardioid, Supercardioid, Hypercardioid, FigureEight, InterferenceTube");
                return AcousticPattern.Omni;
        }
    }
}
