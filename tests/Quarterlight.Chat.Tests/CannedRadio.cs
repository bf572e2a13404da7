using Grpc.Core;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>Canned reports, and the last request of each kind.</summary>
public sealed class CannedRadio : RadioService.RadioServiceBase
{
    public LinkReport Link { get; set; } = Reports.Link();

    public ChannelReport Channels { get; set; } = Reports.Channels();

    public LawVerdict Law { get; set; } = Reports.Law();

    public Func<Exception>? Refusal { get; set; }

    public LinkSetup? Setup { get; private set; }

    public LookUpLawRequest? LawAsked { get; private set; }

    public CoordinateChannelsRequest? Coordination { get; private set; }

    public CheckChannelsRequest? Check { get; private set; }

    public override Task<CheckLinkResponse> CheckLink(CheckLinkRequest request, ServerCallContext context)
    {
        Setup = request.Setup;
        return Refusal is { } refuse ? throw refuse() : Task.FromResult(new CheckLinkResponse { Report = Link, Setup = request.Setup, Picture = request.IncludePicture ? Reports.Picture() : null });
    }

    public override Task<FindQuietChannelsResponse> FindQuietChannels(FindQuietChannelsRequest request, ServerCallContext context)
    {
        Setup = request.Setup;
        return Refusal is { } refuse ? throw refuse() : Task.FromResult(new FindQuietChannelsResponse
        {
            Channels =
            {
                new FmChannel { FrequencyMhz = 91.3, RangeM = 62, InterferenceDb = 0.1, Words = "Nothing disturbs it." },
                new FmChannel { FrequencyMhz = 91.5, RangeM = 62.3, InterferenceDb = 0, Words = "Nothing disturbs it." },
                new FmChannel { FrequencyMhz = 104.9, RangeM = 41, InterferenceDb = 6.4, WorstStationMhz = 104.5, Words = "The station 400 kHz below is heard in pauses." },
            },
            Raster = "88.1 to 107.9 MHz in steps of 200 kHz",
        });
    }

    public override Task<LookUpLawResponse> LookUpLaw(LookUpLawRequest request, ServerCallContext context)
    {
        LawAsked = request;
        return Refusal is { } refuse ? throw refuse() : Task.FromResult(new LookUpLawResponse { Verdict = Law });
    }

    public override Task<CoordinateChannelsResponse> CoordinateChannels(CoordinateChannelsRequest request, ServerCallContext context)
    {
        Coordination = request;
        return Refusal is { } refuse ? throw refuse() : Task.FromResult(new CoordinateChannelsResponse { Report = Channels, Picture = request.IncludePicture ? Reports.Picture() : null });
    }

    public override Task<CheckChannelsResponse> CheckChannels(CheckChannelsRequest request, ServerCallContext context)
    {
        Check = request;
        return Refusal is { } refuse ? throw refuse() : Task.FromResult(new CheckChannelsResponse { Report = Channels, Picture = request.IncludePicture ? Reports.Picture() : null });
    }
}
