using Grpc.Core;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>A radio service that hands every call on to the one a test made; without one it has none of the calls, as an older planner.</summary>
public sealed class FakeRadio(RadioService.RadioServiceBase? inner) : RadioService.RadioServiceBase
{
    public override Task<CheckLinkResponse> CheckLink(CheckLinkRequest request, ServerCallContext context) => Inner.CheckLink(request, context);

    public override Task<FindQuietChannelsResponse> FindQuietChannels(FindQuietChannelsRequest request, ServerCallContext context) => Inner.FindQuietChannels(request, context);

    public override Task<LookUpLawResponse> LookUpLaw(LookUpLawRequest request, ServerCallContext context) => Inner.LookUpLaw(request, context);

    public override Task<CoordinateChannelsResponse> CoordinateChannels(CoordinateChannelsRequest request, ServerCallContext context) => Inner.CoordinateChannels(request, context);

    public override Task<CheckChannelsResponse> CheckChannels(CheckChannelsRequest request, ServerCallContext context) => Inner.CheckChannels(request, context);

    private RadioService.RadioServiceBase Inner => inner ?? throw new RpcException(new Status(StatusCode.Unimplemented, ""));
}
