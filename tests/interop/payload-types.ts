import type * as api from 'discord-api-types/v10';

/** The type each kind of payload is held to; "in:" is what the platform sends to a bot. */
export interface Kinds {
  commands: api.RESTPutAPIApplicationCommandsJSONBody | api.RESTPutAPIApplicationGuildCommandsJSONBody;
  command: api.RESTPostAPIApplicationCommandsJSONBody;
  callback: api.APIInteractionResponse;
  followup: api.RESTPostAPIInteractionFollowupJSONBody;
  edit: api.RESTPatchAPIInteractionOriginalResponseJSONBody;
  heartbeat: api.GatewayHeartbeat;
  identify: api.GatewayIdentify;
  resume: api.GatewayResume;
  presence: api.GatewayUpdatePresence;
  'in:gatewayBot': api.APIGatewayBotInfo;
  'in:ready': api.GatewayReadyDispatchData;
  'in:guild': api.GatewayGuildCreateDispatchData;
  'in:interaction': api.APIInteraction;
  'in:message': api.APIMessage;
  'in:command': api.APIApplicationCommand;
  'in:callbackResponse': api.RESTPostAPIInteractionCallbackWithResponseResult;
}
