using CsCheck;
using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>What a question says about the radio, slot by slot, and how one question goes on from another.</summary>
public sealed class RadioLanguageTests
{
    private static readonly CrewVocabulary Vocabulary = new(DemoData.Scenes, DemoData.Cabins, DemoData.Kits);

    // 1 ft = 0.3048 m, 1 yd = 0.9144 m, 1 mile = 1609.344 m: yard and pound agreement of 1959. A car length is taken as 5 m (judgement).
    [Theory]
    [InlineData("150 m", 150)]
    [InlineData("120 metres", 120)]
    [InlineData("0.3 km", 300)]
    [InlineData("1,500 m", 1500)]
    [InlineData("300 feet", 91.44)]
    [InlineData("200 yards", 182.88)]
    [InlineData("a quarter mile", 402.336)]
    [InlineData("quarter of a mile", 402.336)]
    [InlineData("half a mile", 804.672)]
    [InlineData("three quarters of a mile", 1207.008)]
    [InlineData("1/4 mile", 402.336)]
    [InlineData("a mile", 1609.344)]
    [InlineData("one mile", 1609.344)]
    [InlineData("0.1 miles", 160.9344)]
    [InlineData("three car lengths", 15)]
    [InlineData("a car length", 5)]
    [InlineData("10 cars behind", 50)]
    [InlineData("two hundred and fifty yards", 228.6)]
    [InlineData("a hundred metres", 100)]
    [InlineData("two hundred metres", 200)]
    public void Find_Distance_InMetres(string text, double metres) => Assert.Equal(metres, Assert.Single(DistanceReader.Find(Tokenizer.Split(Joined(text)))).Metres, 6);

    [Theory]
    [InlineData("250 uV/m at the wall")]
    [InlineData("at 40 mph")]
    [InlineData("show it in feet")]
    [InlineData("a car behind us")]
    [InlineData("the metres")]
    public void Find_NoDistance_FindsNone(string text) => Assert.Empty(DistanceReader.Find(Tokenizer.Split(Joined(text))));

    [Fact]
    public void Find_AnyMetres_ReadBackExactly() => Gen.Int[1, 3000].Sample(m => Assert.Equal(m, Assert.Single(DistanceReader.Find(Tokenizer.Split($"will it hold at {m} m"))).Metres));

    [Theory]
    [InlineData("in the US", "US")]
    [InlineData("in the us", "US")]
    [InlineData("in the States", "US")]
    [InlineData("in the united kingdom", "GB")]
    [InlineData("in Scotland", "GB")]
    [InlineData("in the EU", "EU")]
    [InlineData("in New Zealand", "NZ")]
    [InlineData("in germny", "DE")]
    [InlineData("in Austria", "AT")]
    [InlineData("in Australia", "AU")]
    [InlineData("in Ruritania", "Ruritania")]
    [InlineData("in the Zembla Isles", "Zembla Isles")]
    [InlineData("in PT", "PT")]
    [InlineData("a quarter mile behind us", null)]
    [InlineData("in FM", null)]
    [InlineData("in a tunnel", null)]
    [InlineData("In Mono", null)]
    [InlineData("in the City", null)]
    public void Read_Country_CodeOrAsSaid(string text, string? country) => Assert.Equal(country, Radio("is the transmitter legal " + text).Country);

    [Theory]
    [InlineData("on 98.3", 98.3)]
    [InlineData("on 863", 863.0)]
    [InlineData("on 2.4 GHz", 2400.0)]
    [InlineData("at 1900 MHz", 1900.0)]
    [InlineData("98.1MHz", 98.1)]
    [InlineData("at 40 mph", null)]
    [InlineData("at 98 m", null)]
    [InlineData("with 100 mW", null)]
    [InlineData("in 25 kHz steps", null)]
    public void Read_Frequency_InMHz(string text, double? mhz) => Assert.Equal(mhz, Radio("link check " + text).FrequencyMHz);

    // 0 dBm is 1 mW by definition; 20 dBm is 100 mW.
    [Theory]
    [InlineData("50 mW", 50, null)]
    [InlineData("1.5 W", 1500, null)]
    [InlineData("10 milliwatts ERP", 10, TransmitPowerBasis.Erp)]
    [InlineData("100mW EIRP", 100, TransmitPowerBasis.Eirp)]
    [InlineData("20 dBm", 100, null)]
    [InlineData("-20 dBm EIRP", 0.01, TransmitPowerBasis.Eirp)]
    [InlineData("50 nW ERP", 0.00005, TransmitPowerBasis.Erp)]
    [InlineData("250 µV/m at 3 m", 250, TransmitPowerBasis.Field)]
    public void Read_Power_InMilliwattsOrField(string text, double value, TransmitPowerBasis? basis)
    {
        PowerSaid? power = Radio("link check with " + text).Power;

        Assert.NotNull(power);
        Assert.Equal(value, power.Value, 9);
        Assert.Equal(basis, power.Basis);
        Assert.Equal(basis == TransmitPowerBasis.Field ? 3.0 : null, power.FieldDistanceM);
    }

    [Fact]
    public void Read_FieldLimit_ItsDistanceIsNoGap() => Assert.Null(Radio("is 250 uV/m at 3 m legal").GapM);

    [Theory]
    [InlineData("I hear strong stations on 97.7 and 98.5, faint on 99.1", "97.7 Strong, 98.5 Strong, 99.1 Faint")]
    [InlineData("I hear 97.7 and 98.5 strong and 99.1 faint", "97.7 Strong, 98.5 Strong, 99.1 Faint")]
    [InlineData("stations on 88.3 and 90.1", "88.3 Clear, 90.1 Clear")]
    [InlineData("97.7 strong and 98.5 faint", "97.7 Strong, 98.5 Faint")]
    [InlineData("98.1 is taken by a loud station", "98.1 Strong")]
    [InlineData("find a clear channel, we hear a faint 97.7", "97.7 Faint")]
    public void Read_Stations_WithTheirStrength(string text, string stations) =>
        Assert.Equal(stations, string.Join(", ", Radio(text).Stations.Select(s => FormattableString.Invariant($"{s.FrequencyMhz} {s.Strength}"))));

    [Theory]
    [InlineData("and at 200 m?", CrewIntent.LinkCheck)]
    [InlineData("in a tunnel?", CrewIntent.LinkCheck)]
    [InlineData("with the antenna outside?", CrewIntent.LinkCheck)]
    [InlineData("what if we do 40 mph", CrewIntent.LinkCheck)]
    [InlineData("and at 150?", CrewIntent.LinkCheck)]
    [InlineData("with the small kit", CrewIntent.LinkCheck)]
    [InlineData("details", CrewIntent.LinkCheck)]
    [InlineData("is that legal?", CrewIntent.LinkLaw)]
    [InlineData("which channel is quietest?", CrewIntent.QuietChannel)]
    [InlineData("and for twelve bodypacks between 470 and 490", CrewIntent.Channels)]
    [InlineData("what if the windows are down at 40 mph", CrewIntent.WhatIf)]
    [InlineData("what if it rains", CrewIntent.WhatIf)]
    [InlineData("drop the hood camera", CrewIntent.WhatIf)]
    [InlineData("without the lavs", CrewIntent.WhatIf)]
    [InlineData("where do the mics go?", CrewIntent.Plan)]
    [InlineData("why not the visor for the driver?", CrewIntent.WhySite)]
    [InlineData("what sites are there?", CrewIntent.ListSites)]
    [InlineData("use imperial", CrewIntent.SetUnits)]
    [InlineData("thanks", CrewIntent.Unknown)]
    public void Read_AfterALinkQuestion_GoesOnOrTurns(string text, CrewIntent intent) => Assert.Equal(intent, Ask(text, After("will the link hold at 150 m?")).Intent);

    [Theory]
    [InlineData("what if we do 40 mph", CrewIntent.WhatIf)]
    [InlineData("drop the hood camera", CrewIntent.WhatIf)]
    [InlineData("in a tunnel?", CrewIntent.Unknown)]
    [InlineData("details", CrewIntent.Details)]
    [InlineData("what do the changes cost?", CrewIntent.Unknown)]
    [InlineData("what is my trial line", CrewIntent.Unknown)]
    [InlineData("how far back does the seat go", CrewIntent.Unknown)]
    [InlineData("how far is the mic from the driver's mouth", CrewIntent.Plan)]
    [InlineData("where do I put the transmitter pack on the driver", CrewIntent.Plan)]
    [InlineData("is it legal to mount on the windscreen", CrewIntent.WhySite)]
    [InlineData("is it legal to film here", CrewIntent.Unknown)]
    [InlineData("record in stereo", CrewIntent.Unknown)]
    [InlineData("channel 251", CrewIntent.Unknown)]
    [InlineData("can they hear us on 98.3 at 100 m", CrewIntent.LinkCheck)]
    [InlineData("how close do we have to stay", CrewIntent.LinkCheck)]
    [InlineData("max eirp at 2.4 ghz in canada", CrewIntent.LinkLaw)]
    [InlineData("can I use 2.4 GHz in France", CrewIntent.LinkLaw)]
    [InlineData("frequency plan for the bodypacks", CrewIntent.Channels)]
    [InlineData("do our mics interfere with each other", CrewIntent.Channels)]
    public void Read_WithoutALinkQuestion_StaysWhatItWas(string text, CrewIntent intent) => Assert.Equal(intent, Ask(text, CrewMemory.Empty with { SceneName = DemoData.MainScene }).Intent);

    [Fact]
    public void Read_FollowUps_AddToWhatWasSaid()
    {
        CrewMemory memory = After("will the link hold at 150 m?");
        RadioSaid inTunnel = Ask("in a tunnel?", memory).Radio;
        RadioSaid faster = Ask("and at 30 mph in mono", memory with { LastRadio = new RadioMemory(CrewIntent.LinkCheck, inTunnel) }).Radio;

        Assert.Equal(150, inTunnel.GapM);
        Assert.Equal(Surroundings.Tunnel, faster.Surroundings);
        Assert.Equal(150, faster.GapM);
        Assert.Equal(48.28032, faster.SpeedKmPerHour!.Value, 6);
        Assert.False(faster.Stereo);
    }

    [Fact]
    public void Read_NewLinkQuestion_StartsAfresh() => Assert.Null(Ask("how far can we fall back?", After("will the link hold at 150 m in a tunnel?")).Radio.GapM);

    [Fact]
    public void Read_IsThatLegal_KeepsThePowerSaidBefore() => Assert.Equal(50, Ask("is that legal?", After("what range with 50 mW on 98.3?")).Radio.Power!.Value);

    [Fact]
    public void Read_AndOneMore_IsAddedToTheList()
    {
        Assert.Equal([480.1, 480.9, 481.7], Ask("and 481.7", After("check 480.1 and 480.9")).Radio.CarriersMHz);
        Assert.Equal([97.7, 99.1], Ask("and 99.1 faint", After("which channel is quietest? I hear 97.7 strong")).Radio.Stations.Select(s => s.FrequencyMhz));
        Assert.Equal(12, Ask("make it twelve", After("channels for eight bodypacks")).Radio.TransmitterCount);
        Assert.Equal(LinkSight.Clear, Ask("without the truck", After("what range with a truck between")).Radio.Sight);
    }

    [Fact]
    public void Read_AnotherKit_BringsItsOwnGearButKeepsTheRoad()
    {
        RadioSaid said = Ask("with the small kit", After("will the link hold at 150 m with 50 mW on 98.3?")).Radio;

        Assert.Equal((150, null, null, "kits/demo-small"), (said.GapM, said.FrequencyMHz, said.Power, said.KitName));
    }

    [Fact]
    public void Read_AnotherScene_ForgetsWhatWasSaid() => Assert.Null(Ask("and for the driving lesson in a tunnel?", After("will the link hold at 150 m?")).Radio.GapM);

    [Fact]
    public void Read_AnyRadioWords_NeverThrows()
    {
        string[] known = ["link", "at", "150", "m", "98.1", "MHz", "and", "470", "-", "490", "to", "keep", "out", "of", "hear", "strong", "faint", "dBuV/m", "in", "the", "US", "Germany", "antenna", "roof", "quarter", "mile", "half", "a", "hundred", "and", "two", "fifth", "order", "apart", "kHz", "mW", "-3", "dBm", "legal", "check", "behind", "between", "truck", "1/4", "%", "99"];
        CrewMemory memory = After("will the link hold at 150 m?");
        Gen.Int[0, known.Length - 1].Select(i => known[i]).Array[0, 14].Sample(words => Assert.NotNull(Ask(string.Join(' ', words), memory)), iter: 3000);
    }

    private static string Joined(string text) => text.Replace("car lengths", "carlengths", StringComparison.Ordinal).Replace("car length", "carlength", StringComparison.Ordinal);

    private static RadioSaid Radio(string text) => RadioReader.Read(text, Vocabulary.Read(text), UnitPreference.Metric, Vocabulary.Knows, talking: true);

    private static CrewRequest Ask(string text, CrewMemory memory) => RequestReader.Read(CrewText.Clean(text), Vocabulary, memory, UnitPreference.Metric);

    private static CrewMemory After(string question)
    {
        var memory = new CrewMemory { SceneName = DemoData.MainScene };
        CrewRequest request = Ask(question, memory);
        return memory with { LastRadio = new RadioMemory(request.Intent, request.Radio) };
    }
}
