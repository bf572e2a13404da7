using Grpc.Core;
using Quarterlight.Drawing;
using Quarterlight.Planner.Access;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Library;
using Quarterlight.Planner.Mapping;
using Quarterlight.Radio.Channels;
using Quarterlight.Radio.Law;
using Quarterlight.Radio.Link;
using Quarterlight.V1;

namespace Quarterlight.Planner.Services;

/// <summary>RadioService.</summary>
internal sealed class RadioAdapter(TeamLibrary library, PlanningGate gate) : RadioService.RadioServiceBase
{
    private const int DefaultChannelCount = 5;

    /// <inheritdoc/>
    public override async Task<CheckLinkResponse> CheckLink(CheckLinkRequest request, ServerCallContext context)
    {
        var reader = new FieldReader();
        LinkSetup setup;
        LinkTask? task;
        switch (request.SourceCase)
        {
            case CheckLinkRequest.SourceOneofCase.Setup:
                setup = request.Setup;
                task = LinkMapper.ToDomain(setup, "setup", reader);
                break;
            case CheckLinkRequest.SourceOneofCase.Scene:
                setup = await KeptAsync(CallGuard.TeamOf(context), request.Scene, context.CancellationToken);
                task = LinkMapper.ToDomain(setup.Gear, "kit.link_gear", setup.FollowCar, "scene.follow_car", setup.SpeedKmPerHour, "scene.drive_conditions.speed_km_per_hour", reader);
                break;
            default:
                throw Refusals.Invalid("source", "there is no link", "Name a kept scene with a follow car, or send a set-up");
        }

        reader.ThrowIfAny();
        Radio.Link.LinkReport report = LinkCheck.Run(task!);
        Picture? picture = !request.IncludePicture ? null : await gate.RunAsync(
            () => PictureMapper.ToContract(LinkDrawing.Draw(report, request.PictureInFeet ? DistanceUnit.Feet : DistanceUnit.Metres, (task!.Gear.Emission as Radio.Reception.AnalogueFm)?.TargetSnrDb)),
            context.CancellationToken);
        return new CheckLinkResponse { Report = LinkReportMapper.ToContract(report), Setup = setup, Picture = picture };
    }

    /// <inheritdoc/>
    public override Task<FindQuietChannelsResponse> FindQuietChannels(FindQuietChannelsRequest request, ServerCallContext context)
    {
        var reader = new FieldReader();
        int count = request.HasChannelCount ? request.ChannelCount : DefaultChannelCount;
        QuietChannels.ChannelCount.Check("channel_count", count, reader.Violations);
        V1.LinkSetup? setup = request.Setup?.Clone();
        CountryLaw? country = LawBook.Find(setup?.FollowCar?.CountryCode);
        if (setup?.FollowCar is not null && country is null)
        {
            reader.Add("setup.follow_car.country_code", "without a known country there is no channel raster", "Use a two-letter code such as US, GB, DE, CA, AU or JP");
        }

        if (setup?.Gear is { } gear)
        {
            // The answer replaces the frequency; any channel of the raster serves to check the rest.
            gear.FrequencyMhz = country?.FmLowMHz ?? gear.FrequencyMhz;
        }

        LinkTask? task = LinkMapper.ToDomain(setup, "setup", reader);
        if (task is not null && !QuietChannels.Serves(task))
        {
            reader.Add("setup.gear.emission", "only analogue FM of 75 kHz deviation is received on the broadcast band", "Send analogue_fm with a deviation of 75 kHz, or none");
        }

        reader.ThrowIfAny();
        var response = new FindQuietChannelsResponse { Raster = QuietChannels.RasterWords(country!) };
        response.Channels.AddRange(QuietChannels.Rank(task!, country!, count).Select(LinkReportMapper.ToContract));
        response.Advisories.AddRange(QuietChannels.Advisories(task!, country!).Select(GeometryMapper.ToContract));
        return Task.FromResult(response);
    }

    /// <inheritdoc/>
    public override Task<LookUpLawResponse> LookUpLaw(LookUpLawRequest request, ServerCallContext context)
    {
        Radio.Law.LawVerdict verdict = LawBook.Judge(
            request.CountryCode.Trim(),
            request.FrequencyMhz,
            request.HasEirpDbm ? request.EirpDbm : null,
            request.HasConductedPowerDbm ? request.ConductedPowerDbm : null,
            request.HasChannelWidthKhz ? request.ChannelWidthKhz : null);
        return Task.FromResult(new LookUpLawResponse { Verdict = LinkReportMapper.ToContract(verdict) });
    }

    /// <inheritdoc/>
    public override async Task<CoordinateChannelsResponse> CoordinateChannels(CoordinateChannelsRequest request, ServerCallContext context)
    {
        var reader = new FieldReader();
        if (request.Transmitters.Count == 0)
        {
            reader.Add("transmitters", "there are no transmitters", "List at least one");
        }

        ChannelTask asked = ChannelMapper.ToDomain(request.Transmitters, "transmitters", request.Rules, "rules", reader);
        reader.ThrowIfAny();
        return await gate.RunAsync(
            () =>
            {
                ChannelReport report = ChannelReportMapper.ToContract(RoomyCoordination.Solve(asked.Task), asked);
                return new CoordinateChannelsResponse { Report = report, Picture = Draw(request.IncludePicture, report, asked) };
            },
            context.CancellationToken);
    }

    /// <inheritdoc/>
    public override async Task<CheckChannelsResponse> CheckChannels(CheckChannelsRequest request, ServerCallContext context)
    {
        var reader = new FieldReader();
        ChannelTask asked = ChannelMapper.ToDomain(request.FrequenciesMhz, request.Rules, request.HasPowerMw ? request.PowerMw : null, request.HasInterceptDbm ? request.InterceptDbm : null, reader);
        reader.ThrowIfAny();
        return await gate.RunAsync(
            () =>
            {
                ChannelCheck check = ChannelChecker.Check(asked.Task, [.. asked.Task.Transmitters.Select(t => new AssignedCarrier(t.Id, t.FixedHz))]);
                ChannelReport report = ChannelReportMapper.ToContract(check, asked);
                return new CheckChannelsResponse { Report = report, Picture = Draw(request.IncludePicture, report, asked) };
            },
            context.CancellationToken);
    }

    private async Task<LinkSetup> KeptAsync(string team, string name, CancellationToken cancellation)
    {
        Scene scene = await library.Scenes.GetAsync(team, name, cancellation, "scene");
        Kit kit = await library.Kits.GetAsync(team, scene.Kit, cancellation, "scene.kit");
        return (scene.FollowCar, kit.LinkGear) switch
        {
            (null, _) => throw Refusals.Invalid("scene.follow_car", $"{name} has no follow car", "Add one to the scene, or send a set-up"),
            (_, null) => throw Refusals.Invalid("kit.link_gear", $"{scene.Kit} has no link gear", "Add a transmitter and receiver to the kit, or send a set-up"),
            _ => new LinkSetup { Gear = kit.LinkGear, FollowCar = scene.FollowCar, SpeedKmPerHour = scene.DriveConditions?.SpeedKmPerHour ?? 0 },
        };
    }

    private static Picture? Draw(bool wanted, ChannelReport report, ChannelTask asked) =>
        wanted && report.Assignments.Any(a => a.HasFrequencyMhz) ? PictureMapper.ToContract(SpectrumDrawing.Draw(ChannelReportMapper.ToMap(report, asked))) : null;
}
